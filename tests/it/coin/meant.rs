//! What people commonly write and what they mean by it: lines typed one after the other, and the actions of the
//! last; and lines that only look alike.

/// Lines, split at "|", and the actions of the last.
pub(super) const MEANT: &[(&str, &str)] = &[
    // Renewing.
    ("Change the fan.", "remove fan · fit fan new"),
    ("Exchange the flow sensor.", "remove flow-sensor · fit flow-sensor new"),
    ("Swap the fan.", "remove fan · fit fan new"),
    ("Swap out the fan.", "remove fan · fit fan new"),
    ("Take out the fan.|Change the fan.", "fit fan new"),
    ("Take out the fan.|Swap the fan.", "fit fan new"),
    ("Take off the cover.|Replace the cover.", "fit cover"),
    ("Close the gas cock.|Undo the gas union.|Replace the washer.", "make gas-union seal=new"),
    ("Close the gas cock.|Undo the gas union.|Renew the fibre washer.", "make gas-union seal=new"),
    (
        "Close the gas cock.|Undo the gas union.|Change the washer and tighten the union to 20 Nm.",
        "make gas-union seal=new torque=20",
    ),
    (
        "Close the gas cock.|Undo the gas union.|Make the gas union.|Change the washer.",
        "undo gas-union · make gas-union seal=new",
    ),
    (
        "Close the heating valve.|Undo the union of the pump, G 1.|Undo the union of the heater, G 1.|Renew the washer of the pump.",
        "make pump-union seal=new",
    ),
    ("Turn the gas cock off.|Undo the valve plug.|Plug the valve in.", ""),
    ("Note the frequency set on both inverters.", ""),
    ("Slacken the eight M10 nuts round the left motor flange crosswise.", "slacken nuts"),
    ("Swing the burner out on its hinge and let it catch in the service position.", "aside burner"),
    ("The control box hangs on two screws at the top.", ""),
    ("Turn both room thermostats up.", ""),
    ("Close the heating valve.|Put a length of hose on the drain point.", "place hose"),
    ("Put the new heat exchanger in place on four fresh seals wetted with grease.", "fit heat-exchanger new"),
    (
        "Spring back the four clips on the air box lid and lift it away.",
        "undo air-box-lid-clips · remove air-box-lid",
    ),
    (
        "Close the gas cock.|Close the heating flow valve.|Turn both heating valves on again.",
        "restore heating-flow-valve",
    ),
    ("Take off the control box.|Bend up the lugs of the guard and lift it away.", ""),
    // An appliance is run up to something, and is no hose.
    ("Run it to maximum.", "start max"),
    // Supplies, and what is switched.
    ("Close the gas cock.|Open the gas cock.|Turn off the gas.", "isolate gas-cock"),
    ("Close the gas cock.|Open the gas cock.|Shut the gas off.", "isolate gas-cock"),
    ("Close the gas cock.|Turn the gas back on.", "restore gas-cock"),
    ("Close the cold water stop tap.|Open the stop tap.|Shut the water off.", "isolate cold-water-stop-tap"),
    (
        "Switch off at the wall switch.|Switch on at the wall switch.|Turn off the power.",
        "isolate wall-switch",
    ),
    (
        "Close the gas cock.|Open the gas cock.|Turn off the gas and lock it.",
        "isolate gas-cock · lock gas-cock",
    ),
    ("Switch off the heater.", "shutdown"),
    ("Turn the compressor off.", "shutdown"),
    // Locks.
    ("Switch off at the wall isolator.|Fit the padlock.", "lock wall-isolator"),
    (
        "Switch off at the wall isolator, fit the padlock and keep the key.",
        "shutdown · isolate wall-isolator · lock wall-isolator",
    ),
    ("Shut the gas cock and put the locking clamp on its handle.", "isolate gas-cock · lock gas-cock"),
    (
        "Close the flow valve and the return valve and fit the locks.",
        "isolate flow-valve return-valve · lock flow-valve return-valve",
    ),
    // Two things with one head.
    ("Take off the left and right covers.", "remove left-cover right-cover"),
    (
        "Take off the left cover.|Take off the right cover.|Refit the left and right covers.",
        "fit left-cover right-cover",
    ),
    ("Close the flow and return valves of the heating.", "isolate flow-valve return-valve"),
    ("Close the flow and return valves.|Open the flow and return valves.", "restore flow-valve return-valve"),
    // What holds a panel.
    (
        "Take off the front panel (two screws at the bottom, two hooks at the top).",
        "undo front-panel-screws · remove front-panel",
    ),
    (
        "Take off the front panel: two screws and two clips.",
        "undo front-panel-screws · undo front-panel-clips · remove front-panel",
    ),
    ("Unhook the front panel.", "remove front-panel"),
    (
        "Take off the front panel (two screws).|Hang the front panel back on with its two screws.",
        "fit front-panel · make front-panel-screws",
    ),
    ("Take off the lid: one screw.|Put the lid back on with its screw.", "fit lid · make lid-screw"),
    // The tester is proved as a part of the proof.
    (
        "Switch off at the wall isolator and lock it off.|Test the tester on a known source, test at the mains terminals live to neutral, live to earth and neutral to earth and test the tester again.",
        "prove appliance-mains at=mains-terminals reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\" reading=\"tester on the known source again||shows live\"",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Check the voltage tester on the proving unit, then test L-N, L-E and N-E.",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\"",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Test at the mains terminals between live and neutral, live and earth and neutral and earth.",
        "prove appliance-mains at=mains-terminals reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\"",
    ),
    ("Take off the lid.|Prove the tester on the proving unit and refit the lid.", "fit lid"),
    // What is unclipped, unscrewed, switched on, put back.
    ("Unclip the flow sensor.", "undo flow-sensor-clip"),
    ("Unclip the flow sensor.|Clip the flow sensor back on.", "make flow-sensor-clip"),
    (
        "Close the heating valve.|Slacken the safety valve half a turn, then unscrew it.",
        "slacken safety-valve-thread · undo safety-valve-thread",
    ),
    (
        "Close the heating valve.|Unscrew the safety valve.|Screw the safety valve in and tighten it to 30 Nm.",
        "make safety-valve-thread torque=30",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Remove the lock and switch on.",
        "restore wall-isolator",
    ),
    ("Close the gas cock.|Open the test point.|Close the meter test point.", "make test-point"),
    ("Take off the cover: two screws.|Take the bag off the cover.", "take bag"),
    ("Close the gas cock.|Open the gas cock and purge.", "restore gas-cock · purge gas"),
    (
        "Note the pressure and the flow temperature setting.",
        "record flow-temperature-setting · read reading=pressure",
    ),
    ("Undo the two screws of the cover and lift it off.", "undo cover-screws · remove cover"),
    ("Take off the cover, lift it off its hooks.", "remove cover"),
    ("Undo the two bolts of the exchanger, half a turn each.", "slacken exchanger-bolts"),
    (
        "Close the gas cock.|Undo the gas union.|Put in a new fibre washer and tighten the gas union.",
        "make gas-union seal=new",
    ),
    ("Connect the filling loop.", "place filling-loop"),
    (
        "Close both heating valves.|Open the drain cock.|Let the boiler drain.",
        "release heating what=pressure by=drain through=drain-cock",
    ),
    ("Take out the trap.|Check the trap for cracks.", "inspect trap criterion=\"no cracks\""),
    ("Take out the trap.|Check that the trap is clean.", "inspect trap criterion=\"the trap is clean\""),
    ("Close the gas cock.|Slacken the screw in the inlet test nipple.", "slacken inlet-test-nipple"),
    (
        "Close the gas cock.|Slacken the screw in the inlet test nipple.|Tighten the nipple screw.",
        "tighten inlet-test-nipple",
    ),
    ("Close the cold water valve.|Open the hot tap at the basin.|Shut the basin tap.", "make hot-tap"),
    ("Unplug the mixer.|Lift out the fan together with the mixer.", "remove fan mixer"),
    ("Turn off the fused spur and take out the fuse.", "isolate fused-spur"),
    ("Open the drain cock of the heating.|When water comes at the drain cock tighten it.", "make drain-cock"),
    // At the start of a line.
    ("Take out the siphon.|Clean it with warm water.", "clean siphon"),
    ("Close the gas cock.|Lock it.", "lock gas-cock"),
    ("Close the flow and return valves.|Lock them.", "lock flow-valve return-valve"),
    ("Close the flow and return valves.|Lock both.", "lock flow-valve return-valve"),
    ("Undo the four nuts of the fan.|Lift it out.", "remove fan"),
    ("Take out the fan.|Refit it.", "fit fan"),
    ("Close the heating valve.|Open the drain cock.|Close it.", "make drain-cock"),
    ("Undo the two screws of the cover.|Tighten them.", "make cover-screws"),
    // What belongs to which part, and what is counted, screwed in, hinged and snapped.
    (
        "Undo the four case screws and take off the case.|Undo the two screws of the gas valve.",
        "undo gas-valve-screws",
    ),
    (
        "Close the gas cock.|Slacken the burner pressure test nipple.|Undo the two screws of the gas valve.",
        "undo gas-valve-screws",
    ),
    ("Undo the four case screws.|Undo the two screws of the fan.|Do up the two screws.", "make fan-screws"),
    (
        "Take out the fan.|Refit the fan and tighten its two screws to 3 Nm.",
        "fit fan · tighten fan-screws torque=3",
    ),
    ("Switch off at the spur.|Disconnect the brown and blue wires of the fan.", "undo fan-wires"),
    (
        "Switch off at the spur.|Disconnect the brown, blue and green/yellow wires of the pump, noting their positions.",
        "undo pump-wires",
    ),
    (
        "Shut the stopcock.|Undo the immersion heater with a box spanner and withdraw it.",
        "undo immersion-heater-thread · remove immersion-heater",
    ),
    ("Unscrew the lid of the strainer.", "remove strainer-lid"),
    ("Unscrew the filter bowl with a strap wrench.", "remove filter-bowl"),
    ("Switch the boiler to standby.", "shutdown"),
    ("Put the heat pump on standby and wait two minutes.", "shutdown · wait 2"),
    (
        "Switch off at the fused spur, pull the fuse and keep it in your pocket.",
        // The fuse is the spur's, as above; whoever has it in the pocket has locked it.
        "shutdown · isolate fused-spur · lock fused-spur",
    ),
    ("Hinge the panel down.|Hinge the panel back up.", "fit panel"),
    ("Release the two clips of the panel.|Snap the clips in.", "make panel-clips"),
    (
        "Close the heating valve.|Undo the pump unions.|Do up the pump unions with new washers and tighten them to 40 Nm.",
        "make pump-unions seal=new torque=40",
    ),
    (
        "Close the heating valve.|Undo the pump unions.|Do up the pump unions.|Check both unions again while they are hot.",
        "test leak-hot pump-unions",
    ),
    (
        "Close the gas cock.|Undo the gas union.|Do up the gas union.|Test the gas union for tightness with leak detection fluid.",
        "test leak-fluid gas-union",
    ),
    (
        "Shut the stopcock.|Connect a hose to the drain cock and drain the cylinder.",
        "place hose · release domestic-water what=pressure by=drain through=drain-cock",
    ),
    ("Remove the casing after undoing the two screws underneath.", "undo casing-screws · remove casing"),
    ("Take off the casing.|After removing the casing, undo the two screws of the fan.", "undo fan-screws"),
    ("Lift out the exchanger after removing its two screws.", "undo exchanger-screws · remove exchanger"),
    ("Shut the flow and return isolators of the heating.", "isolate flow-isolator return-isolator"),
    (
        "Shut the heating valve.|Attach a hose to the drain off cock.|Drain the boiler.",
        "release heating what=pressure by=drain through=drain-cock",
    ),
    ("Take the nut off the vessel bracket.|Refix the bracket nut.", "make vessel-bracket-nut"),
    (
        "Close the gas cock.|Close the heating valve.|Drain the boiler.",
        "release heating what=pressure by=drain",
    ),
];

/// Lines, split at "|", of which the last says nothing to do.
pub(super) const NOT_MEANT: &[&str] = &[
    "Do not change the fan.",
    "Never swap the fan.",
    "Take out the fan.|Do not replace the fan.",
    "Swap places with the second fitter.",
    "Change over to the other cylinder.",
    "It is normal that the fan is replaced after ten years.",
    "Close the gas cock.|Undo the gas union.|Do not replace the washer.",
    "Change the oil.",
    "Take out the trap.|Fill the trap with water.",
    "Close the oil valve.|Fill the trap with water.",
    "Close the oil valve.|Unscrew the lid of the trap.|Empty it.",
    "Close the flow and return valves of the heating.|Make sure the filling loop is disconnected.",
    "Close the gas cock.|When you close it, wait.",
    "Take out the siphon.|Tell the operator.|Clean it.",
    "Take out the fan.|Do not clean it.",
    "Take out the fan.|It must turn freely.",
    "Close the gas cock.|Lock both.",
    "Take off the left and right covers.|Swap them over.",
    "Clean it.",
    "Take out the fan.|Put it aside.",
    "The fan must stop by itself.",
    "Open the window to let air in.",
    "Switch off at the wall isolator.|Test the tester on a known source.",
    "Switch off at the wall isolator.|Prove your voltage tester on the proving unit.",
    "Unplug the fan.|Test live to neutral, 216 to 253 V.",
    "Hold the pipe with a second spanner.",
    "Switch off the light.",
    "Turn on the lamp.",
    "Turn off the gas.",
    "Turn off the radio.",
    "Unplug the fan.|Turn off the gas.",
    "Close the gas cock.|Shut the water off.",
    "Do not turn off the gas.",
    "Close the gas cock.|Never turn on the gas.",
    "Fit the padlock.",
    "Close the gas cock.|Open the gas cock.|Fit the padlock.",
    "Switch off at the wall switch.|Do not fit the padlock yet.",
];
