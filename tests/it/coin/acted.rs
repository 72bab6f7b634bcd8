//! What a verb acts on: the head of what stands behind it, what is nearest to a pronoun, and nothing that is only named
//! beside it.

/// Lines, split at "|", and the actions of the last.
pub(super) const ACTED: &[(&str, &str)] = &[
    // The head, and not what says of which sort it is or where it was.
    (
        "Take off the electrode.|Refit the electrode.|Peel off the old door gasket and the electrode gasket.",
        "",
    ),
    ("Take off the bypass and put it back.|Strip the old O-rings off the bypass.", ""),
    ("Take the valve out and put it back.|Put a new O-ring on the spindle of the valve.", ""),
    ("Take off the fan and put it back.|Pull the thingummy off the fan.", "remove thingummy"),
    ("Take off the valve and put it back.|The old actuator can now be lifted off the valve.", ""),
    ("Close the heating valve.|Undo the pump unions.|Scrape the old gasket off the pump unions.", ""),
    (
        "Take off the bypass and put it back.|Pull out the two clips that hold the bypass.",
        "undo bypass-clips",
    ),
    ("Close the gas cock.|Press the old valve insert out of the housing.", "remove valve-insert"),
    ("Take off the fan.|Fit the new sensor with the arrow pointing towards the fan.", "fit sensor new"),
    // Words that belong to the name, and words that belong to the verb.
    ("Pull out the two locking clips.", "undo locking-clips"),
    ("Pull the two clear sensing tubes off the pressure switch.", "undo pressure-switch-sensing-tubes"),
    ("Plug in the pump according to your marks.", ""),
    ("Close the gas cock.|Draw off the spade connectors.", "undo spade-connectors"),
    // What is kept, laid down or hung aside is not put in its place.
    ("Take off the cover.|Hang it to one side.", ""),
    ("Take off the cover.|Hang the cover back on.", "fit cover"),
    ("Undo the two cover screws.|Put the screws in the magnetic tray.", ""),
    ("Undo the two cover screws.|Put the screws in the lid of your toolbox.", ""),
    ("Undo the two cover screws.|Put the screws back in.", "make cover-screws"),
    ("Undo the eight pump head bolts and lift the pump head off.|Lift the pump head onto the bench.", ""),
    ("Clip the cover on.|Secure the cables with two cable ties.", ""),
    // What a pronoun stands for.
    ("Undo the two cover screws.|The inner cover is held by six screws; undo these.", ""),
    (
        "Close the gas cock.|Disconnect the sensing tube of the controller and swing it clear.",
        "undo controller-sensing-tube",
    ),
    (
        "Close the heating valve.|Undo the two union nuts.|Reconnect the sensing tube and tighten its nut to 12 Nm.",
        "make sensing-tube",
    ),
    (
        "Take the vessel out and put it back.|The sensing tube of the switch crosses in front of the vessel, so ease it off.",
        "",
    ),
    // What is only marked, held or supported before something is done to it.
    (
        "Mark the sensing tubes of the pressure switch and pull them off.",
        "undo pressure-switch-sensing-tubes",
    ),
    ("Mark the plug of the fan and pull it off.", "undo fan-plug"),
    ("Support the vessel and draw it out.", "remove vessel"),
    // Two that are told apart by where they sit.
    (
        "Close the gas cock.|Close the upstream gas valve and the downstream gas valve.|Open the downstream gas valve.",
        "restore downstream-gas-valve",
    ),
    ("Close the heating valve.|Unscrew the strainer cap upstream of the pump.", "undo pump-strainer-cap"),
    // Which of several: the one that is as many, and none that is off already.
    (
        "Undo the two panel screws.|Undo the four pump head screws.|Put the four screws in and tighten them to 5 Nm.",
        "make pump-head-screws torque=5",
    ),
    ("Unclip the sensor.|Withdraw the clip from the stem.", ""),
    ("Close the heating valve.|Undo the pump unions.|Take the pump out.|Connect the pump again.", "fit pump"),
    // The other of two, and of a group that is one thing none.
    (
        "Take out the left filter and the right filter.|Clean the left filter.|Clean the other filter.",
        "clean right-filter",
    ),
    ("Close the heating valve.|Undo both unions.|Do up the union.", ""),
    ("Remove both filters.|Refit the filter.", ""),
    ("Close the isolator for the gas.|Close the isolator for the cold water.", "isolate cold-water-isolator"),
    // What is named by two is no third thing, whatever is done to it.
    ("Close the flow valve and the return valve.|Clean the valve.", ""),
    ("Take the fuse out of the boiler spur.|Take the fuse out of the pump spur.", "isolate pump-spur-fuse"),
    // A plug that closes a pipe carries no current.
    ("Close the gas cock.|Take the plug out of the supply pipe.", ""),
    // What a circuit is proved by, and what is read so much later.
    ("Switch off the isolator.|Check for dead between all three phases and to earth.", "prove mains"),
    ("After ten minutes read the supply air temperature.", "read reading=\"supply air temperature\""),
    ("Switch off the isolator, put your padlock through it.", "isolate isolator · lock isolator"),
    ("Close the oil valve.|Switch off the isolator.|Prove the burner dead.", "prove mains"),
    // A rule, a condition, a state: no order, and no limit.
    ("Switch off the isolator and lock it.|Go on with the compressor remaining locked out.", ""),
    ("Close the heating valve.|A weeping joint is to be drained and remade.", ""),
    ("Close the heating valve.|Check the pressure and, if it is below 3 bar, stop.", "read reading=pressure"),
    ("Switch on the boiler.|Spin the fan to see that it runs freely.", ""),
    ("Take off the photocell.|Check the glass for soot; a dry cloth will do.", ""),
    ("Close the gas cock.|Undo the gland nut.|Not tighter, since the gland nut will otherwise crack.", ""),
    ("Call up the flame current on the display.", ""),
    ("Finish with no more than 10 Nm.", ""),
    ("Start from the top.", ""),
];
