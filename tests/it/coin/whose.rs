//! Whose a thing is, where that is said once at the beginning of a sentence or by a possessive; and what stands for a noun.

/// Lines, split at "|", and what the last one says.
pub(super) const TOLD: &[(&str, &str)] = &[
    // One of several before a colon, or behind a preposition.
    ("Boiler 1: shut the gas cock.|Boiler 2: shut the gas cock.", "isolate boiler-2-gas-cock"),
    (
        "Boiler 1: shut its gas cock. Boiler 2: shut its gas cock.",
        "isolate boiler-1-gas-cock · isolate boiler-2-gas-cock",
    ),
    ("On boiler 1 shut the gas cock.|On boiler 2, shut the gas cock.", "isolate boiler-2-gas-cock"),
    ("Pump 1: undo its plug.|Pump 2: undo the plug.", "undo pump-2-plug"),
    (
        "Left boiler: isolate its gas cock and take its cover off.\
         |Right boiler: isolate its gas cock and take its cover off.",
        "isolate right-boiler-gas-cock · remove right-boiler-cover",
    ),
    (
        "At the left fan unplug the lead and undo the two screws.\
         |At the right fan unplug the lead and undo the two screws.",
        "undo right-fan-lead · undo right-fan-screws",
    ),
    (
        "Boiler 1: undo the four M6 screws and take the cover off.\
         |Boiler 2: undo the four M6 screws and take the cover off.",
        "undo boiler-2-cover-screws · remove boiler-2-cover",
    ),
    ("Pump 1: take the cover off and refit it.", "remove pump-1-cover · fit pump-1-cover"),
    ("Boiler 1: gas cock off.|Boiler 2: gas cock off.", "isolate boiler-2-gas-cock"),
    // What is of something else, or only where it is, keeps its name.
    ("Boiler 1: take the cover off the fan.", "remove fan-cover"),
    ("Boiler 1: lift the cover off its hooks.", "remove boiler-1-cover"),
    ("On the left, undo the two screws.", "undo screws"),
    ("In the control box unplug the lead.", "undo lead"),
    // A possessive with a letter or a number, or before two words.
    ("Undo pump 1's plug.|Undo pump 2's plug.", "undo pump-2-plug"),
    ("Undo the left fan's plug.", "undo left-fan-plug"),
    ("Undo the pump 1 plug.", "undo pump-1-plug"),
    ("Take off the left pump's cover.", "remove left-pump-cover"),
    // "That of" behind a comma and a third time; three of one noun, each with its place.
    (
        "Undo the plug of the fan, that of the pump and that of the motor.",
        "undo fan-plug pump-plug motor-plug",
    ),
    (
        "Undo the clamp at the elbow, that at the bend and that at the tee.",
        "undo elbow-clamp bend-clamp tee-clamp",
    ),
    (
        "Undo the clamp at the elbow, the clamp at the bend and the clamp at the tee.",
        "undo elbow-clamp bend-clamp tee-clamp",
    ),
    // A pump that is marked is pumped out by nobody.
    ("Take pump A and pump B out.", "remove pump-A pump-B"),
    ("Take fan A out and pump B out.", "remove fan-A · remove pump-B"),
];
