//! The lines about a workshop compressor, where the first questions have told which circuits the job touches, and what
//! becomes of each: the stage, the actions, the new things, and nothing asked.

/// Lines with what they tell; a line of two parts behind "|" is kept in parts, and the last counts.
pub(super) const LINES: &[(&str, &str)] = &[
    (
        "Switch off at the wall isolator and lock it off.",
        "MakeSafe: shutdown · isolate wall-isolator · lock wall-isolator [mains, appliance mains, wall isolator] ",
    ),
    (
        "Prove dead at the motor terminals, all three pairs, 0 to 5 V.",
        "MakeSafe: prove appliance-mains at=motor-terminals reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\" [motor, motor terminals] ",
    ),
    // A valve shuts no electric ring.
    (
        "Close the ball valve to the ring main.",
        "MakeSafe: isolate ball-valve [compressed air, air pipes, ball valve] ",
    ),
    (
        "Open the drain valve under the receiver until the gauge reads 0 to 0.1 bar.",
        "MakeSafe: release air-pipes what=pressure by=drain through=drain-valve · prove air-pipes reading=\"gauge|0..0.1 bar\" [drain valve] ",
    ),
    (
        "Take off the belt guard: four M6 screws, 10 mm.",
        "Strip: undo belt-guard-screws · remove belt-guard [belt guard, belt guard screws] ",
    ),
    (
        "Slacken the two slide bolts of the motor, 17 mm.",
        "Strip: slacken motor-slide-bolts [motor slide bolts] ",
    ),
    (
        "Undo the delivery union at the head, G 3/4, 36 mm; copper washer, always new.",
        "Strip: undo head-delivery-union [head, copper washer G 3/4, head delivery union] ",
    ),
];

/// The same step where the gauge has a name that begins like a supply.
pub(super) const NAMED_GAUGE: &str =
    "Open the drain valve under the receiver until the mains drain gauge reads 0 to 0.1 bar.";
