//! Lines of which more than one thing can be meant: each is asked about, and nothing is taken.

/// Lines, split at "|", and the names that come into question in the last.
pub(super) const AMBIGUOUS: &[(&str, &[&str])] = &[
    // Of two parts that were worked on alike.
    (
        "Undo the three screws of the damper.|Undo the three screws of the pump.\
         |Fit the damper and the pump.|Tighten the screws to 4 Nm.",
        &["damper screws", "pump screws"],
    ),
    (
        "Shut the flow ball valve and the return ball valve.|Ease the ball valve open until the glass fills.",
        &["flow ball valve", "return ball valve"],
    ),
    // By a name that two have.
    (
        "Switch off the fan isolator and the pump isolator.|Lock the isolator.",
        &["fan isolator", "pump isolator"],
    ),
    ("Close the flow valve and the return valve.|Open the valve.", &["flow valve", "return valve"]),
    ("Take off the front cover and the side cover.|Refit the cover.", &["front cover", "side cover"]),
    ("Take out the left filter and the right filter.|Clean the filter.", &["left filter", "right filter"]),
    (
        "Unplug the fan sensor and the pump sensor.|Plug the sensor in.",
        &["fan sensor plug", "pump sensor plug"],
    ),
    (
        "Undo the two cover screws and the two panel screws.|Tighten the screws.",
        &["cover screws", "panel screws"],
    ),
    (
        "Close the heating valve.|Open the boiler drain cock and the cylinder drain cock.|Close the drain cock.",
        &["boiler drain cock", "cylinder drain cock"],
    ),
    (
        "Close the heating valve.|Open the pump vent and the radiator vent.|Close the vent.",
        &["pump vent", "radiator vent"],
    ),
    (
        "Close the cold water valve and the hot water valve.|Turn the water back on.",
        &["cold water valve", "hot water valve"],
    ),
    // What one step did to two things, with whatever verbs, makes neither nearer.
    ("Close the flow valve and shut the return valve.|Open the valve.", &["flow valve", "return valve"]),
    ("Take off the fan cover, then take off the pump cover.|Refit the cover.", &["fan cover", "pump cover"]),
    (
        "Pull off the fan plug and disconnect the pump plug.|Push the plug back in.",
        &["fan plug", "pump plug"],
    ),
    (
        "Switch off the fan isolator, then switch off the pump isolator.|Switch the isolator on.",
        &["fan isolator", "pump isolator"],
    ),
    (
        "Put a red tray under the pump and a blue tray under the fan.|Take the tray away.",
        &["red tray", "blue tray"],
    ),
    (
        "Undo the two screws of the fan and the two screws of the pump.|Do up the screws.",
        &["fan screws", "pump screws"],
    ),
    ("Disconnect the live wire and the neutral wire.|Reconnect the wire.", &["live wire", "neutral wire"]),
    (
        "Unplug the upper plug and the lower plug of the board.|Plug the board in.",
        &["board upper plug", "board lower plug"],
    ),
    (
        "Close the heating valve.|Undo the drain plug and the heater plug.|Refit the plug.",
        &["drain plug", "heater plug"],
    ),
    // What one step did to things of two kinds.
    ("Remove the cover and disconnect the gas pipe.|Refit it.", &["gas pipe", "cover"]),
    ("Take off the cover and unplug the fan.|Put it back.", &["fan plug", "cover"]),
    ("Lock off the isolator and the gas cock.|Turn it back on.", &["isolator", "gas cock"]),
    // One or the other.
    (
        "Take off the fan cover and the pump cover.|Refit the fan cover or the pump cover.",
        &["fan cover", "pump cover"],
    ),
    // What tells two of one name apart is not said.
    ("Close the heating valves V1 and V2.|Open the valve.", &["heating valve V1", "heating valve V2"]),
    ("Close heating valve A and heating valve B.|Open the valve.", &["heating valve A", "heating valve B"]),
    ("Remove filter 1 and filter 2.|Refit the filter.", &["filter 1", "filter 2"]),
    ("Take the covers off the fan and the pump.|Refit the cover.", &["fan cover", "pump cover"]),
    ("Put a cloth over the fan and a cloth over the pump.|Take the cloth away.", &["cloth", "cloth 2"]),
    ("Remove the fan, then the pump.|Clean it.", &["fan", "pump"]),
    // "The other" of three.
    (
        "Take out the left filter, the middle filter and the right filter.|Refit the middle filter.|Clean the other filter.",
        &["left filter", "right filter"],
    ),
    (
        "Close the flow valve, the return valve and the bypass valve.|Open the flow valve.|Open the other valve.",
        &["return valve", "bypass valve"],
    ),
    // What shuts off and what lets out.
    (
        "Close the heating valve.|Open the bypass valve and the drain valve.|Close the valve.",
        &["bypass valve", "drain valve"],
    ),
    // By a pronoun.
    ("Take out the fan and the pump.|Clean it.", &["fan", "pump"]),
    ("Take out the fan and the pump and clean it.", &["fan", "pump"]),
    ("Unplug the fan and the pump, then plug it in.", &["fan plug", "pump plug"]),
    ("Close the flow valve and the return valve.|Open it.", &["flow valve", "return valve"]),
    ("Take off the cover and the panel.|Refit it.", &["cover", "panel"]),
    ("Lay a cloth over the fan and a sheet under the pump.|Take it away.", &["cloth", "sheet"]),
    (
        "Take the vessel out and put it back.|Supporting the vessel, take out the two screws of its bracket and draw it out.",
        &["bracket", "vessel"],
    ),
    // By no name at all.
    ("Turn off the flow valve and the return valve.|Turn it back on.", &["flow valve", "return valve"]),
    (
        "Switch off the fan isolator.|Switch off the pump isolator.|Switch back on.",
        &["fan isolator", "pump isolator"],
    ),
    ("Close the heating valve.|Close the cold water valve.|Drain down.", &["heating", "domestic water"]),
    ("Close the heating valve.|Close the cold water valve.|Fill to 1.2 bar.", &["heating", "domestic water"]),
    ("Close the gas cock.|Close the heating valve.|Prove it at zero.", &["gas", "heating"]),
    // By a side and a noun that two have.
    (
        "Take off the left fan cover and the left pump cover.|Clean the left cover.",
        &["left fan cover", "left pump cover"],
    ),
    // One that is slack and one that is open.
    ("Undo the fan clip and slacken the pump clip.|Tighten the clip.", &["pump clip", "fan clip"]),
    // What the step before speaks of against what was touched last.
    (
        "Unplug the left fan.|Unplug the right fan.|Take out the left fan.|Put the plug back.",
        &["left fan plug", "right fan plug"],
    ),
    // "Both" only joins them.
    ("Unplug both the fan lead and the pump lead.|Plug the lead back in.", &["fan lead", "pump lead"]),
    (
        "Take out the left lamp and the right lamp.|Remove the fan.|Refit the fan and the lamp.",
        &["left lamp", "right lamp"],
    ),
];
