//! The verbs of actions.

use super::words::words;

words! {
    /// What an action does.
    Verb {
        /// The appliance starts.
        Start = "start",
        /// The appliance is shut down in order.
        ShutDown = "shut down",
        /// The way ends.
        Finish = "finish",
        /// An isolator is closed.
        Isolate = "isolate",
        /// A closed isolator is locked.
        Lock = "lock",
        /// An isolator is unlocked and opened.
        Restore = "restore",
        /// Energy or medium is let out of a section.
        Release = "release",
        /// A section is shown to be at zero.
        Prove = "prove",
        /// A medium or pressure is let in from a temporary source.
        Charge = "charge",
        /// What does not belong in a section is driven out.
        Purge = "purge",
        /// Tightness or function is shown.
        Test = "test",
        /// Fasteners are loosened but stay.
        Slacken = "slacken",
        /// Fasteners or plugs are taken apart.
        Undo = "undo",
        /// Fasteners or plugs are put together.
        Make = "make",
        /// Slack fasteners are tightened.
        Tighten = "tighten",
        /// A component comes off.
        Remove = "remove",
        /// A component is moved out of the way.
        MoveAside = "move aside",
        /// A component goes on.
        Fit = "fit",
        /// A component goes for good.
        Discard = "discard",
        /// A part or face is cleaned.
        Clean = "clean",
        /// A part, face or seal is looked at against a criterion.
        Inspect = "inspect",
        /// A temporary item is placed.
        Place = "place",
        /// A temporary item is taken away.
        TakeAway = "take away",
        /// A setting is written down.
        RecordSetting = "record setting",
        /// A setting is set.
        Set = "set",
        /// A value is read.
        Read = "read",
        /// Time passes.
        Wait = "wait",
        /// A photograph is taken.
        Photograph = "photograph",
        /// Somebody is told.
        Tell = "tell",
        /// A named role must lift this stop.
        Hold = "hold",
        /// A question is put.
        Ask = "ask",
    }
}

impl Verb {
    /// Whether whoever does it changes the state of the appliance: its supplies, what is in it, what holds it together.
    /// Of moving aside, setting and opening everyday words say too many other things.
    pub fn changes_the_appliance(&self) -> bool {
        matches!(
            self,
            Self::Isolate
                | Self::Restore
                | Self::Release
                | Self::Charge
                | Self::Purge
                | Self::Slacken
                | Self::Undo
                | Self::Make
                | Self::Tighten
                | Self::Remove
                | Self::Fit
        )
    }

    /// Whether values are read in it.
    pub fn takes_readings(&self) -> bool {
        matches!(self, Self::Prove | Self::Test | Self::Read)
    }
}
