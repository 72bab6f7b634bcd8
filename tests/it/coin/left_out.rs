//! Things that a sentence names beside those of its actions: each is held by an action or asked about, and none goes
//! without a word.

/// Lines, split at "|", and what the last names and has to be held or told.
pub(super) const NAMED: &[(&str, &[&str])] = &[
    ("Take out the fuse and the fan.", &["fuse", "fan"]),
    ("Take out the fuse, the fan and the pump.", &["fuse", "fan", "pump"]),
    (
        "Lift off the valve motor.|Unplug the two motors from the panel.",
        &["valve motor plug", "the two motors"],
    ),
    ("Take out the filter.|Refit both filters.", &["filter", "both filters"]),
    (
        "Lift off the valve motor.|Unplug the three motors from the panel.",
        &["valve motor plug", "the three motors"],
    ),
    ("Prove dead at the terminals of the fan and the pump.", &["pump"]),
    ("Renew the transformer together with its leads.", &["transformer", "leads"]),
    ("Close the gas cock.|Part the union above the valve, then the one below.", &["union", "the one"]),
    ("Close the burner door and the gas cock.", &["burner door", "gas cock"]),
    ("Close the gas cock and the drain cock.", &["gas cock", "drain cock"]),
    ("Switch off the isolator and the pump.", &["isolator", "pump"]),
    ("Remove the screw from the fan and from the pump.", &["fan screw", "pump screw"]),
    ("Remove the cover from the fan and the pump.", &["fan cover", "pump"]),
    ("Undo the nut on the flow pipe and on the return pipe.", &["flow pipe nut", "return pipe"]),
    ("Put a blanking cap on the flow pipe and on the return pipe.", &["blanking cap", "return pipe"]),
    ("Undo the screw on the left and the screw on the right.", &["screw", "screw"]),
    ("Fit a gauge to port A and a gauge to port B.", &["gauge", "gauge"]),
    ("Undo screw (1) and screw (2).", &["screw", "screw"]),
    ("Pull off the first and the second filter.", &["second filter", "first"]),
    ("Lift off the lid of the tank and the lid of the bin.", &["lid", "lid"]),
    ("Pull plug X1 off the board and plug X2 off the fan.", &["plug X2", "plug X1"]),
    ("Unplug the fan plug, CN4, and the pump plug, CN11.", &["fan plug", "pump plug"]),
    ("Close the heating valve.|Drain the heating and the domestic water.", &["heating", "domestic water"]),
    ("Fit the pressure gauge to V1 and the vacuum gauge to V2.", &["pressure gauge", "vacuum gauge"]),
    (
        "Close the heating valve.|Open the drain cock on the left and the one on the right.",
        &["left drain cock", "right drain cock"],
    ),
    (
        "Close the heating valve.|Unscrew the manual air vent at the top and the automatic one at the pump.",
        &["manual air vent", "automatic one"],
    ),
    ("Take the lids off the control box and the wiring centre.", &["control box lids", "wiring centre"]),
    (
        "Close the heating flow valve.|Open both heating valves.",
        &["heating flow valve", "both heating valves"],
    ),
    ("Close the gas cock of each boiler.", &["gas cock", "each boiler"]),
    (
        "Undo the two bolts of the upper fan bracket and the two of the lower one.",
        &["upper fan bracket bolts", "lower one"],
    ),
    (
        "Remove the left motor and the right motor.|Refit the left motor first, then the other one.",
        &["left motor", "other one"],
    ),
    ("Check the inlet pressure (20 mbar) and the burner pressure (8.5 mbar).", &["burner pressure"]),
    ("Refit the burner with a new gasket.", &["burner", "gasket"]),
    ("Remove the pump head and check the impeller.", &["pump head", "impeller"]),
    (
        "Clean the inlet strainer and check the float switch and the non-return valve.",
        &["inlet strainer", "float switch", "non-return valve"],
    ),
    ("Remove the circulator and clean the flanges.", &["circulator", "flanges"]),
    ("Take off the fan, the pump and the lid.|Refit the fan, the pump and the lid.", &["fan", "pump", "lid"]),
];

/// Lines that name things beside those of their actions, of which nothing is left out.
pub(super) const WHOLE: &[&str] = &[
    "Switch off both pumps at the pump switch.",
    "Clean the evaporator of heat pump 1.",
    "Take the screws out of the fan cover and lift it off.",
    "Take out the four nuts and washers.",
    "Switch off the immersion heater at the switch and lock the switch off.",
    "Isolate the gas at the meter cock and lock it.",
    "Cap the gas pipe with a blanking cap and hang a tag on the cock.",
    "Slacken the screw in the test nipple and let the gas out.",
    "Open the drain cock one turn and drain the boiler.",
    "Close the heating valve.|Bleed the pump and the highest radiator.",
    "Undo the union, keep the washer and put a bag over the end.",
    "Lock the isolator, padlock and tag.",
    "Close the gas cock but leave the vent and the window open.",
    "Undo the outlet union the same way and put a cap on the pipe.",
    "Undo the screws of the fan and of the pump.",
    "Cover the pump and the board with a dust sheet.",
    "Take out the burner and the old burner seal.",
    "Tell the customer, the keeper and the office.",
    "Undo the two screws, one on the left and one on the right.",
    "Take out the sensor with its seal.",
    "Undo the union, fit a new washer and do the union up.",
];
