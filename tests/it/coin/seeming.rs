//! What only seems to be an order, what a word seems to name, and what "it" seems to be.

/// Lines, split at "|", and the actions of the last.
pub(super) const SEEMING: &[(&str, &str)] = &[
    // What a switch that is open or closed does, its state tells: IEC 60050-441 has a switching device open when
    // nothing passes; of a valve it is the other way round.
    ("Open the isolator.", "isolate isolator"),
    ("Open the isolator and lock it.|Close the isolator.", "restore isolator"),
    ("Close the gas valve.|Open the gas valve.", "restore gas-valve"),
    // Told, not ordered.
    ("Close the gas cock.|I'd lock it only there's no hole for one.", ""),
    ("Take off the cover.|With it off you can see the control box.", ""),
    ("Take off the mesh.|Normally rinsed and refitted, this one is scrap.", ""),
    ("Close the gas cock.|Nothing undone there.", ""),
    ("Close the gas cock.|Opening the cock in one go would hurt the meter.", ""),
    ("Take off the panel.|The cloth may be taken away now, but the panel stays off.", ""),
    ("Unplug the boiler at the wall socket.|The tube to the pressure switch stays on.", ""),
    ("Close the gas cock.|If the gauge hangs above zero the cock is passing: stop, ring in.", ""),
    ("Switch off the boiler.|Rise means the cock is letting by, so stop the job.", ""),
    ("Switch on the boiler.|Half a turn each crosswise to start with.", ""),
    ("Switch on the boiler.|Call it twenty-two foot pounds.", ""),
    ("Close the flow valve.|Leave it open so that no pressure builds up.", ""),
    ("Switch on the boiler, three minutes off load.", "start"),
    ("Close the gas cock.|The tube is only pushed in.", ""),
    ("Switch on the boiler.|The boiler should stop at 10 bar and start again at 8.", ""),
    ("Switch on the boiler.|Let the owner know that they have air.", "tell who=owner"),
    ("Close the gas cock.|Burner off at the panel.", ""),
    (
        "Take off the cover.|Undo the plug.|Pressure off by the gauge port, 1 turn only, nip up again after.",
        "",
    ),
    ("Close the gas cock.|Sensor out with the burner firing.", "remove sensor"),
    // A plug is pulled, and nothing is shut.
    ("Switch off the boiler.|Unplug the gas valve.", "undo gas-valve-plug"),
    ("Close the gas valve.|Unplug the gas valve.", ""),
    ("Pull the fan plug and the pump plug.", "undo fan-plug pump-plug"),
    ("Pull the plugs off the fan and the pump.", "undo fan-plug pump-plug"),
    ("Pull both plugs off the fan and the pump.", "undo fan-plug pump-plug"),
    (
        "Clean the fan and the pump.|Take the screws out of the fan and the pump.",
        "undo fan-screws pump-screws",
    ),
    // A fuse that is out is put back; one that is in may be renewed, and nobody says how it came out.
    (
        "Switch off at the double-pole switch and remove the fuse.|Replace the fuse and switch on.",
        "restore fuse · restore double-pole-switch",
    ),
    ("Switch off at the double-pole switch and remove the fuse.|Refit the fuse.|Replace the fuse.", ""),
    // As many as are said.
    ("Close the gas cock and the water valve.|Turn both valves back on.", "restore gas-cock water-valve"),
    // What is left as it is.
    ("Close the drain cock but leave the flow valve open.", ""),
    (
        "Close the heating valve.|Undo the drain cock.|Close the drain cock but leave the flow valve open.",
        "make drain-cock",
    ),
    // What is acted on stands before the verb, or is something that nobody knows.
    ("Take off the pump head.|Put the motor back on the pump head.", ""),
    ("Take off the pump head.|Screw the cartridge out of the pump head and throw it away.", ""),
    (
        "Close the stopcock.|Open the hot tap.|Open the stopcock and, when the hot tap runs clear, close it.",
        "restore stopcock · make hot-tap",
    ),
    (
        "Remove the single M4 screw that holds the element cover, lift the cover off.",
        "undo element-cover-screw · remove element-cover",
    ),
    // Somebody's own.
    ("Take off the cover.|My sheet back in the van.", ""),
];

/// Figures as they are said, behind "torque the union to", and what they are read as.
pub(super) const SPOKEN: &[(&str, &str)] = &[
    ("one point two newton metres", "1.2"),
    ("nought point five newton metres", "0.5"),
    ("two and a half newton metres", "2.5"),
    ("four and a quarter newton metres", "4.25"),
    ("twenty-five newton metres", "25"),
    ("twenty five newton metres", "25"),
    ("thirty newton metres", "30"),
    ("a hundred and fifty newton metres", "150"),
    ("two hundred newton metres", "200"),
    ("1 point 2 newton metres", "1.2"),
    ("ten point oh five newton metres", "10.05"),
    ("between five and six newton metres", "5..6"),
    ("eighteen to twenty newton metres", "18..20"),
];
