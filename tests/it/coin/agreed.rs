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
    (
        "Undo the four Allen screws of the pump head.|Do up two screws of the pump head.",
        "make pump-head-allen-screws 2",
    ),
    ("Undo the screws of the cover, M6.|Do up the screws, 10 mm.", "make cover-screws"),
];

/// Lines, split at "|", and the actions of the last: what a reviewer typed and found read wrongly, and its like.
pub(super) const REVIEWED: &[(&str, &str)] = &[
    // What people and other verbs are told of is no thing.
    ("Hang a sign on the door.|Take the sign away and show the user it runs.", "take sign · tell who=user"),
    ("Take the lid off and rinse the bowl.", "remove lid"),
    ("Unplug the fan and hold the cover.", "undo fan-plug"),
    ("Pull off both fan plugs, the big one is the supply, the small one the speed signal.", "undo fan-plugs"),
    ("Hand over to the customer, fill in the logbook.", "finish in-service"),
    ("Close the heating valve.|Fill in the service record.", ""),
    // On a condition, nothing is done for certain.
    ("Close the heating valve.|If the pressure is above 2 bar, open the vent.", ""),
    ("Take out the trap.|Renew the trap if it is cracked.", ""),
    ("Take out the trap.|Clean the trap and renew the trap if it is cracked.", "clean trap"),
    // What ought not to be is no criterion.
    ("Take out the trap.|Check if the trap is cracked.", "inspect trap"),
    // Whether screws hold, and whether a union drips.
    ("Undo the two cover screws.|Check the tightness of the cover screws.", "inspect cover-screws"),
    (
        "Close the heating valve.|Undo the pump unions.|Look for water at the pump unions.",
        "test leak-cold at=pump-unions",
    ),
    // Sizes and names.
    (
        "Close the heating valve.|Undo the 30 mm nut on the diverter cartridge and pull it out.",
        "undo diverter-cartridge-nut · remove diverter-cartridge",
    ),
    ("Take off the pump: one nut.|Do the nut up to 12 Nm.", "make pump-nut torque=12"),
    // Which circuit it opens is asked; the valve that is known is another.
    ("Close the valve of the gas.|Close the drain valve of the boiler.", ""),
    // One verb on two sorts of things, and what "it" is of.
    (
        "Unplug the motor.|Unclip the motor and take it off.|Clip the motor back on and plug it in.",
        "make motor-clip · make motor-plug",
    ),
    ("Take off the ducts and pull off the plugs.|Push on ducts and plugs.", "fit ducts · make plugs"),
    (
        "Close the gas cock.|Pull off the two gas hoses and the plug.|Push on the hoses and the plug.",
        "fit gas-hoses · make plug",
    ),
    // The plug of the appliance shuts it off; whoever keeps it has locked it.
    ("Pull the plug, keep the plug in your pocket.", "isolate mains-plug · lock mains-plug"),
    ("Pull the plug and keep it in your pocket.|Plug the boiler in.", "restore mains-plug"),
    ("Unplug the boiler.|Plug the boiler in.", "restore mains-plug"),
    ("Unplug the boiler at the wall socket.|Plug the boiler in.", "restore wall-socket"),
    ("Pull the plug of the fan.", "undo fan-plug"),
    // How hot it comes belongs to the drawing; how long alone is a wait.
    (
        "Run a hot tap for 5 min at 45 to 55 °C.",
        "start hot-water · test function reading=\"hot water|45..55 Cel\"",
    ),
    ("Run a hot tap for 5 min.", "start hot-water · wait 5"),
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
    (
        "Close the gas cock.|Undo the gas pipe union nut, 30 mm.|Reconnect the gas pipe with a new washer, 30 Nm.",
        "make gas-pipe-union-nut seal=new torque=30",
    ),
    ("Take out the plate heat exchanger.|Refit the plate exchanger.", "fit plate-heat-exchanger"),
];
