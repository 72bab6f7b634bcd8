//! What words add to a name, and must agree with the thing that is meant: how many, which size, whose.

/// Lines, split at "|", and the actions of the last.
pub(super) const AGREED: &[(&str, &str)] = &[
    (
        "Close the gas cock.|Undo the gas pipe union nut, 24 mm.|Undo the three nuts M6 of the fan flange.",
        "undo fan-flange-nuts",
    ),
    (
        "Close the gas cock.|Undo the gas pipe union nut, 24 mm.|Undo the three nuts M6 of the fan flange.|Tighten the three nuts crosswise to 5 Nm.",
        "make fan-flange-nuts torque=5 pattern=cross",
    ),
    // By the number alone, the size alone, the owner alone.
    ("Take off the cover: two screws.|Undo the four screws.", "undo screws"),
    ("Take off the cover: two screws, M4.|Undo the two screws M6.", "undo screws"),
    ("Close the gas cock.|Undo the gas union nut, 24 mm.|Undo the nut M6.", "undo nut"),
    ("Take off the cover: two screws.|Undo the two screws of the venturi.", "undo venturi-screws"),
    // Counted and sized without a noun.
    (
        "Take off the air box lid: four M5 screws.|Lift out the fan.|Unscrew the venturi from the old fan (3 x M4).",
        "undo venturi-screws",
    ),
    ("Unscrew the venturi (3 x M4).|Screw the venturi to the new fan (3 x M4).", "make venturi-screws"),
    // What agrees is meant all the same.
    ("Undo the four M6 screws of the cover.|Do up the four M6 screws.", "make cover-screws"),
    ("Undo two of the four cover screws.|Undo the other two screws.", "undo cover-screws 2"),
    (
        "Undo all the screws of the burner door.|Refit the four screws of the burner door.",
        "make burner-door-screws",
    ),
    ("Undo the screws of the cover, M6.|Do up the screws, 10 mm.", "make cover-screws"),
];

/// Lines, split at "|", of which the last puts back what is called by a part of its name, and makes nothing.
pub(super) const BY_PART: &[(&str, &str)] = &[
    (
        "Close the flow and return isolation valves under the boiler.|Close the cold water inlet valve.|Open the flow and return valves and the cold inlet.",
        "restore flow-isolation-valve return-isolation-valve cold-water-inlet-valve",
    ),
    ("Close the gas service cock.|Open the gas cock.", "restore gas-service-cock"),
    ("Close the gas isolation valve.|Open the gas cock.", "restore gas-isolation-valve"),
    ("Close the heating valve.|Open the drain point.|Shut the drain.", "make drain-point"),
    ("Close the cold water valve.|Open the kitchen hot tap.|Shut the kitchen tap.", "make kitchen-hot-tap"),
    (
        "Close the gas cock.|Undo the gas pipe union nut.|Connect the gas union nut.",
        "make gas-pipe-union-nut",
    ),
    ("Take out the plate heat exchanger.|Refit the plate exchanger.", "fit plate-heat-exchanger"),
];
