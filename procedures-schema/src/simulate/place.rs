//! Moments of a run.

/// A moment of a run; places are ordered as they happen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    // Executions and actions count from 1, so that 0 is the moment before. An action has room behind it
    // for the steps that follow its failure.
    execution: u32,
    action: u32,
}

/// Moments kept behind each action for what is done after it failed.
const ROOM: u32 = 4096;

impl Place {
    /// Before everything.
    pub const START: Self = Self { execution: 0, action: 0 };
    /// After everything.
    pub const END: Self = Self { execution: u32::MAX, action: u32::MAX };

    /// After action `action` of execution `execution`, both from 0.
    pub fn of_action(execution: usize, action: usize) -> Self {
        Self {
            execution: counted(execution),
            action: counted(action).saturating_mul(ROOM).min(u32::MAX - ROOM),
        }
    }

    /// After the whole of execution `execution`, from 0.
    pub fn after(execution: usize) -> Self {
        Self { execution: counted(execution), action: u32::MAX }
    }

    /// Before execution `execution`, from 0.
    pub fn before(execution: usize) -> Self {
        Self { execution: counted(execution), action: 0 }
    }

    /// The next moment behind the same action.
    pub(super) fn next_behind(self) -> Self {
        let last = self.action % ROOM == ROOM - 1;
        Self { action: if last { self.action } else { self.action.saturating_add(1) }, ..self }
    }

    /// The execution, from 0; none for the start and the end.
    pub fn execution(self) -> Option<usize> {
        if self == Self::END { None } else { index(self.execution) }
    }

    /// The action within its execution, from 0; none for whole steps.
    pub fn action(self) -> Option<usize> {
        if self.action == u32::MAX { None } else { index(self.action / ROOM) }
    }
}

fn counted(position: usize) -> u32 {
    // Documents are limited to 5,000 steps; a longer run would only blur its far end.
    u32::try_from(position).unwrap_or(u32::MAX - 2).saturating_add(1).min(u32::MAX - 1)
}

fn index(counted: u32) -> Option<usize> {
    usize::try_from(counted.checked_sub(1)?).ok()
}

#[cfg(test)]
mod tests {
    use super::Place;

    #[test]
    fn places_are_ordered_as_they_happen() {
        let order = [
            Place::START,
            Place::before(0),
            Place::of_action(0, 0),
            Place::of_action(0, 0).next_behind(),
            Place::of_action(0, 1),
            Place::after(0),
            Place::before(1),
            Place::of_action(1, 0),
            Place::END,
        ];
        assert!(order.is_sorted_by(|a, b| a < b));
        assert_eq!(Place::of_action(3, 2).execution(), Some(3));
        assert_eq!(Place::of_action(3, 2).action(), Some(2));
        assert_eq!(Place::of_action(3, 2).next_behind().action(), Some(2));
        assert_eq!(Place::after(3).execution(), Some(3));
        assert_eq!((Place::START.execution(), Place::END.execution()), (None, None));
    }
}
