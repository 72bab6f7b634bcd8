//! Nouns that names of the map or earlier words tell apart, though nothing of that name is on the map: no third one is made.

/// Lines, split at "|", and what is asked of the last.
pub(super) const ASKED: &[(&str, &str)] = &[
    (
        "Take off the left fan cover and the right fan cover.|Take out the fan.",
        "Which fan is it: left or right? Say it in the words",
    ),
    (
        "Lift off the top panel and the front panel.|Unplug the earth lead of the panel.",
        "Which panel is it: top panel or front panel? Say it in the words",
    ),
    // Of what earlier lines name, nothing may have been read.
    (
        "Stop the supply fan and the extract fan.|Remove the fan.",
        "Which fan is it: supply or extract? Say it in the words",
    ),
    (
        "Look after contactors K1 and K2.|Take out the contactor.",
        "Which contactor is it: K1 or K2? Say it in the words",
    ),
    (
        "Mind the fan motor and the pump motor.|Take out the motor.",
        "Which motor is it: fan or pump? Say it in the words",
    ),
    // By what they are of.
    (
        "Mind the clip of the diverter motor.|Mind the clip of the bypass cartridge.|Push the clip back in.",
        "Which clip is it: of the diverter motor or of the bypass cartridge? Say it in the words",
    ),
    (
        "Mind the mixing valve of the underfloor circuit.|Mind the mixing valve at the bath.|Unscrew the mixing valve.",
        "Which mixing valve is it: of the underfloor circuit or at the bath? Say it in the words",
    ),
    (
        "Mind the safety valve on the heating side and the safety valve on the brine side.|Renew the safety valve.",
        "Which safety valve is it: on the heating side or on the brine side? Say it in the words",
    ),
    // One over both, or one of each.
    (
        "Remove the belt guard from the supply fan and the extract fan.",
        "Is it one belt guard for both, or one of each? Say it in the words: the belt guards",
    ),
    // How it is, tells none apart.
    (
        "Pull out the flow sensor and the return sensor.|Renew the faulty sensor.",
        "Which sensor is it: flow or return? Say it in the words",
    ),
    // Beside what is read.
    (
        "Unplug the left sensor and the right sensor.|Measure the resistance of the sensor.",
        "Which sensor is it: left sensor or right sensor? Say it in the words",
    ),
    // What was put there for the work goes by that name.
    (
        "Put a drip tray under the pump.|Remove the pump.|Refit the tray.",
        "Is it another \"tray\" than the one on the map?",
    ),
];

/// Lines of which the last means one thing all the same.
pub(super) const ONE: &[(&str, &str)] = &[
    ("Take off the inner fan cover and the outer fan cover.|Take out the fan.", "remove fan"),
    ("Mind the fan motor.|Take out the motor.", "remove motor"),
    // What is on the one now was on the other before.
    ("Mind the clamp on the flow pipe.|Mind the clamp on the return pipe.|Undo the clamp.", "undo clamp"),
    ("Take off the left fan cover and the right fan cover.|Take out the left fan.", "remove left-fan"),
    (
        "Lift off the top panel.|Lift off the front panel.|Unplug the earth lead of the panel.",
        "undo front-panel-earth-lead",
    ),
];
