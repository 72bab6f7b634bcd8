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
    // A switch of a name that is on something.
    ("Turn off the service switch on the boiler.", "isolate service-switch"),
    (
        "Turn off the emergency switch at the boiler room door and the service switch on the boiler.",
        "isolate boiler-room-door-emergency-switch boiler-service-switch",
    ),
    // Valves of several owners in pairs.
    (
        "Close the flow and return valves of boiler A and boiler B.",
        "isolate boiler-A-flow-valve boiler-B-flow-valve boiler-A-return-valve boiler-B-return-valve",
    ),
    (
        "Shut the suction and discharge valves of pump 1 and pump 2.\
         |Open the suction and discharge valves of pump 2.",
        "restore pump-2-suction-valve pump-2-discharge-valve",
    ),
    ("Close the flow and return valves of the boiler.", "isolate flow-valve return-valve"),
    // By their places, whatever says on which side.
    (
        "Shut the oil cock at the tank and the one in front of the burner.",
        "isolate tank-oil-cock oil-cock-before-the-burner",
    ),
    (
        "Shut the oil cock at the tank and the one in front of the burner.|Open the cock at the tank.",
        "restore tank-oil-cock",
    ),
    (
        "Shut the oil cock at the tank and the oil cock behind the filter.",
        "isolate tank-oil-cock oil-cock-after-the-filter",
    ),
    (
        "Close the heating valve.|Close the cocks before and after the separator.\
         |Close the cocks before and after the pump.",
        "isolate cock-before-the-pump cock-after-the-pump",
    ),
    (
        "Close the heating valve.|Close cocks before and after the pump.",
        "isolate cock-before-the-pump cock-after-the-pump",
    ),
    // What is no list, and what is one.
    ("Throw the old nuts away, grease the threads and put on new nuts.", "discard nuts · fit nuts new"),
    (
        "Remove the cover of the oil pump and the lid of the control box.",
        "remove oil-pump-cover control-box-lid",
    ),
    ("Remove the front cover but not the side cover.", "remove front-cover"),
    // What something is waited for, is not worked on.
    (
        "Take out the glass.|Close the heating valve.|Ease the valve open until the glass fills.",
        "restore heating-valve",
    ),
    // A topic is said of each of a list, of what goes on behind a full stop, of its own noun and of what stands for it.
    (
        "Boiler 1: close the flow valve, the return valve and the gas cock.",
        "isolate boiler-1-flow-valve boiler-1-return-valve boiler-1-gas-cock",
    ),
    (
        "Boiler 1: close the flow valve and then the gas cock.",
        "isolate boiler-1-flow-valve boiler-1-gas-cock",
    ),
    ("Fan 1: remove the belt, the pulley and the guard.", "remove fan-1-belt fan-1-pulley fan-1-guard"),
    (
        "Boiler 1: shut the gas cock. Undo the four screws of the cover.\
         |Boiler 2: shut the gas cock. Undo the four screws of the cover.",
        "isolate boiler-2-gas-cock · undo boiler-2-cover-screws",
    ),
    (
        "Pump 1: close the two valves and take the pump out.|Pump 2: close the two valves and take the pump out.\
         |Pump 1: put the pump in and open the valves.",
        "fit pump-1 · restore pump-1-valve-1 pump-1-valve-2",
    ),
    ("Take the fan 2 out.|Fan 1: take it out.", "remove fan-1"),
    ("Boiler 1 - shut the gas cock.|Boiler 2 - shut the gas cock.", "isolate boiler-2-gas-cock"),
    ("Fryer 1: undo the plug.|Fryer 2: undo the plug.", "undo fryer-2-plug"),
    ("Step 2: undo the plug.", "undo plug"),
    // Its number is no figure and no count.
    (
        "Close the heating valve.|Undo the union of boiler 1.|Undo the union of boiler 2.|Boiler 2: tighten the union to 25 Nm.",
        "make boiler-2-union torque=25",
    ),
    ("Undo the screws of pump 1.|Tighten the screws of pump 1 to 12 Nm.", "make pump-1-screws torque=12"),
    ("Undo the screws of pump 1.|Tighten pump 1's screws to 12 Nm.", "make pump-1-screws torque=12"),
    ("Close the heating valve.|Boiler 1: close V1 and V2.", "isolate V1 V2"),
    // Whose what is on it is.
    ("On the left burner door undo the four nuts.", "undo left-burner-door-nuts"),
    (
        "On the left pump undo the four screws of the head and lift the head off.\
         |On the right pump undo the four screws of the head and lift the head off.",
        "undo right-pump-head-screws · remove right-pump-head",
    ),
    (
        "On the left burner remove the cover and undo its four screws.",
        "remove left-burner-cover · undo left-burner-cover-screws",
    ),
    ("Close the gas cocks of boiler 1 and 2.", "isolate boiler-1-gas-cock boiler-2-gas-cock"),
    (
        "Close the heating valve.|Close the two valves before and after the filter.",
        "isolate valve-before-the-filter valve-after-the-filter",
    ),
    // The third of three.
    ("Shut the valve of pump 1.|Shut the valve of pump 2.|Shut the valve of pump 3.", "isolate pump-3-valve"),
    (
        "Take the cover off pump 1.|Take the cover off pump 2.|Take the cover off pump 3.",
        "remove pump-3-cover",
    ),
    ("Fan 1: undo the plug.|Fan 2: undo the plug.|Fan 3: undo the plug.", "undo fan-3-plug"),
];
