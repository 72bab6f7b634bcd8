//! Lines as engineers write them, of which only several together tell what was proved or tested, and lines that
//! only look alike: what the whole then proves and tests. Written before the recogniser knew how to read them.

/// Lines, split at "|", and the proofs and tests of all of them.
pub(super) const TOLD: &[(&str, &str)] = &[
    // The tester before, the pairs, the tester again, over several lines.
    (
        "Switch off at the fused spur and lock it off.|Try the voltage indicator on the proving unit.|Test at the mains terminals L-N, L-E and N-E.|read: 0 V on every pair|Try the voltage indicator on the proving unit once more.",
        "prove appliance-mains at=mains-terminals reading=\"tester on a known source||shows live\" reading=\"L to N|0 V\" reading=\"L to E|0 V\" reading=\"N to E|0 V\" reading=\"tester on the known source again||shows live\"",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Take off the cover: two screws. Test the tester on a known source.|Test live to neutral, live to earth and neutral to earth.|Test the tester again on the known source and put the cover to one side.",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\" reading=\"tester on the known source again||shows live\"",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Check the two-pole tester on the proving unit, then test L-N, L-E and N-E.|read: no voltage on any pair, then check the tester again",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\" reading=\"tester on the known source again||shows live\"",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Prove the tester on the proving unit.|Tell the operator.|Test L-N, L-E and N-E.|Prove the tester on the proving unit again.",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\" reading=\"tester on the known source again||shows live\"",
    ),
    // Half of it stays half.
    (
        "Switch off at the wall isolator and lock it off.|Test L-N, L-E and N-E.|Prove the tester again on the proving unit.",
        "prove mains reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\" reading=\"tester on the known source again||shows live\"",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Prove the tester on the proving unit.|Test L-N, L-E and N-E.|Take off the cover: two screws.",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\"",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Prove the tester on the proving unit.|Test L-N, L-E and N-E.|Do not prove the tester again.",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\"",
    ),
    // The supply came back in between: what was proved of the tester before that counts no more.
    (
        "Prove the tester on the proving unit.|Switch off at the wall isolator and lock it off.|Remove the lock and switch on.|Switch off at the wall isolator and lock it off.|Test L-N, L-E and N-E.",
        "prove mains reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\"",
    ),
    (
        "Switch off at the wall isolator and lock it off.|Test L-N, L-E and N-E.|read: 230 V on all pairs",
        "prove mains reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\"",
    ),
    // Gas.
    (
        "Switch off the boiler.|Close the gas cock.|Open the test point of the gas valve and connect the gauge.|read: gas pressure 0 mbar",
        "prove gas at=test-point reading=\"gauge at the test point, vented|0 mbar\"",
    ),
    (
        "Switch off the boiler.|Close the gas cock.|Slacken the screw of the test nipple and put the hose of the gauge on.|read: 0 mbar, no rise within a minute",
        "prove gas at=test-nipple reading=\"gauge at the test point, vented|0 mbar\" reading=\"rise in 60 s|0..0.2 mbar\"",
    ),
    (
        "Switch off the boiler.|Shut the gas cock.|Open the test point.|read: pressure not above 0.2 mbar and no rise in 2 minutes; then close the test point",
        "prove gas at=test-point reading=\"gauge at the test point, vented|..0.2 mbar\" reading=\"rise in 60 s|0..0.2 mbar\"",
    ),
    // Ten seconds are no minute.
    (
        "Switch off the boiler.|Shut the gas cock.|Open the test point.|read: 0 mbar and no rise in 10 seconds",
        "prove gas at=test-point reading=\"gauge at the test point, vented|0 mbar\"",
    ),
    ("Switch off the boiler.|Open the test point of the gas valve.|read: gas pressure 0 mbar", ""),
    ("Switch off the boiler.|Close the gas cock.|Open the test point.|read: gas pressure 20 mbar", ""),
    ("Switch off the boiler.|Close the gas cock.|Open the test point.|read: gas pressure 0 to 5 mbar", ""),
    ("Switch off the boiler.|Close the gas cock.|Open the test point.|read: gas pressure not 0 mbar", ""),
    ("Switch off the boiler.|Close the gas cock.|read: humidity 0 %", ""),
    // Tightness.
    (
        "Close the gas cock.|Undo the gas union.|Make the gas union with a new washer to 20 Nm.|Open the gas cock.|read: pressure drop 0 mbar in 2 min",
        "test tightness",
    ),
    (
        "Close the gas cock.|Undo the gas union.|Make the gas union with a new washer to 20 Nm.|Open the gas cock and the test point.|read: 20 mbar at the test point, no fall in 5 minutes",
        "test tightness at=test-point",
    ),
    (
        "Close the gas cock.|Undo the gas union.|Make the gas union with a new washer to 20 Nm.|Open the gas cock.|read: no drop in 30 seconds",
        "",
    ),
    // Still shut: nothing was loaded, and it proves nothing either.
    (
        "Switch off the boiler.|Close the gas cock.|Undo the gas union.|Make the gas union with a new washer to 20 Nm.|read: pressure drop 0 mbar in 2 min",
        "",
    ),
    // Water at zero.
    (
        "Close the flow and return valves of the heating.|Open the drain cock into a bucket.|read: gauge 0 bar, no flow from the drain cock for 2 minutes, water 35 °C at most",
        "prove heating reading=\"gauge|0 bar\" reading=\"flow at the open vent or drain||none for 2 min\" reading=\"water temperature|..35 Cel\"",
    ),
    (
        "warning: the water is hot; it can scald; wait until it is below 40 °C.|Close the flow and return valves of the heating.|Open the drain cock.|read: 0 bar, nothing more from the drain cock",
        "prove heating reading=\"gauge|0 bar\" reading=\"flow at the open vent or drain||none for 60 s\" reading=\"water temperature|..40 Cel\"",
    ),
    (
        "Close the flow and return valves of the heating.|Open the drain cock.|read: heating pressure 0.0 bar",
        "prove heating reading=\"gauge|0.0 bar\"",
    ),
    (
        "Close the cold water stop tap.|Open the hot tap at the basin.|read: no more water from the basin tap for 2 minutes",
        "prove domestic-water reading=\"gauge or hot tap|0.0..0.1 bar\" reading=\"hot tap||runs dry, no flow for 2 min\"",
    ),
    ("Close the flow and return valves of the heating.|read: heating pressure 0 bar", ""),
    (
        "Close the flow and return valves of the heating.|Open the drain cock.|read: heating pressure 0 to 0.5 bar",
        "",
    ),
    (
        "Close the flow and return valves of the heating.|Close the cold water stop tap.|Open the heating drain cock.|Open the hot tap.|read: pressure 0 bar",
        "",
    ),
    ("Open the drain cock of the heating.|read: pressure 0 bar", "prove heating reading=\"gauge|0 bar\""),
    // Filled and tight.
    (
        "Close the flow and return valves of the heating.|Undo the heating union.|Make the heating union with a new washer, 30 Nm.|Open the flow and return valves and fill the heating to 1.5 bar.|read: 1.5 bar, no drop in 10 minutes, tissue dry at the heating union",
        "test fill-pressure reading=\"pressure|1.5 bar\" · test leak-cold",
    ),
    (
        "Close the flow and return valves of the heating.|Undo the heating union.|Make the heating union with a new washer, 30 Nm.|Open the flow and return valves and fill the heating to 1.5 bar.|read: cold pressure 1.4 to 1.6 bar",
        "test fill-pressure reading=\"pressure|1.4..1.6 bar\"",
    ),
    (
        "Close the flow and return valves of the heating.|Undo the heating union.|Make the heating union with a new washer, 30 Nm.|Open the flow and return valves and fill the heating to 1.5 bar.|read: heating union dry after 10 minutes",
        "test leak-cold heating-union",
    ),
    ("read: heating pressure 1.5 bar", ""),
    // Figures of the burner.
    (
        "Switch off the boiler.|Undo the four nuts of the fan on the flue.|Tighten the four nuts of the fan to 5 Nm.|Run the boiler at full load for 10 minutes.|read: CO2 9.0 to 9.6 %, CO/CO2 at most 0.004",
        "test combustion reading=\"CO2|9.0..9.6 %\" reading=\"CO/CO2||at most 0.004\"",
    ),
    (
        "Run the boiler at minimum load for 5 minutes.|read: CO2 8.2 to 8.8 % at minimum load",
        "test combustion mode=min reading=\"CO2|8.2..8.8 %\"",
    ),
    (
        "Run the boiler at full load for 10 minutes.|read: O2 in the air duct not below 20.6 %",
        "test flue-integrity reading=\"O2 in the air duct|20.6.. %\"",
    ),
    ("Switch off the boiler.|read: CO2 in the room not above 0.1 %", ""),
];

/// Lines, split at "|", and what the last of them does.
pub(super) const DONE: &[(&str, &str)] = &[
    // Into what it is screwed, is only where.
    (
        "Close the heating valve.|Unscrew the pressure sensor.|Screw the pressure sensor into the block to 8 Nm.",
        "make pressure-sensor-thread torque=8",
    ),
    ("Close the heating valve.|Unscrew the air vent.|Screw the new air vent into the pipe.", "make air-vent"),
    ("Take off the lid: one screw.|Put the lid back and screw it down.", "fit lid · make lid-screw"),
    // What is pushed home.
    ("Pull the flue pipe out of the hood.|Push the flue pipe fully home.", "fit flue-pipe"),
    ("Pull the drawer out.|Push the drawer right in.", "fit drawer"),
    ("Unplug the fan.|Push the plug of the fan home until it clicks.", "make fan-plug"),
    ("Pull the air duct off the fan.|Push the air duct back on to the stop.", "fit air-duct"),
    // The cap of a vent shuts nothing off that a sentence undoes.
    ("Close the heating valve.|Open the cap of the automatic air vent one turn.", ""),
    ("Loosen the small cap on the air vent.", ""),
    ("Unscrew the air vent.|Screw in the new air vent and open its cap.", "make air-vent"),
    (
        "Close the heating valve.|Open the drain cock.|Disconnect the filling loop and put its caps on.",
        "take filling-loop",
    ),
    // Tested and shut again.
    (
        "Switch off the boiler.|Test the gas pipework at the meter, 20 mbar for 2 minutes, and close the test point again.",
        "test tightness at=meter-test-point · make meter-test-point",
    ),
    (
        "Run the boiler at full load for 10 minutes, measure CO2 at the flue sampling point and put its cap back on.",
        "start max · wait 10 · test combustion at=flue-sampling-point · make flue-sampling-point",
    ),
    // A look at joints that are hot, for drips.
    (
        "Close the flow and return valves of the heating.|Undo the heating union.|Make the heating union with a new washer, 30 Nm.|Open the flow and return valves.|Look at the heating union again while it is hot: it must stay dry.",
        "test leak-hot heating-union",
    ),
    (
        "Draw hot water for 5 minutes; the tap must give 48 to 55 °C.",
        "start hot-water · test function reading=\"hot water|48..55 Cel\"",
    ),
    ("Fill the trap with clean water, push it up and turn it until it clicks.", ""),
    (
        "Pull the condensate hose off the trap.|Take the trap down.|Fill the trap with clean water and push it back up.",
        "fit trap · charge condensate",
    ),
    // Where it goes is said when the hose is led there.
    (
        "Close the flow and return valves of the heating.|Put a hose on the drain cock and lead it to the gully.|Open the drain cock and let the heating drain.",
        "release heating what=pressure by=drain through=drain-cock to=gully",
    ),
    // What closes a port is called after it.
    (
        "Close the gas cock.|Open the burner test point.|Tighten the test point screw.",
        "make burner-test-point",
    ),
    ("Switch off the boiler.|Open the air sampling port.|Refit the sampling cap.", "make air-sampling-port"),
    (
        "Take off the dust cap.|Close the heating valve.|Open the drain cock.|Put the cap back.",
        "fit dust-cap",
    ),
    ("Switch off the boiler.|Hang the key on the board.", ""),
    ("Take out the four transport caps.", ""),
    // Each has its own torque, and the last turn is how tight it is.
    (
        "Undo the two flange screws and the four cover nuts.|Tighten the two flange screws to 3 Nm first and only then the four cover nuts to 8 Nm.",
        "make flange-screws torque=3 · make cover-nuts torque=8",
    ),
    ("Undo the two spades and the earth nut.|Spades on, earth first, that 8 mm nut 2 Nm.", "make spades"),
    (
        "Undo the flange nuts.|Tighten the flange nuts crosswise, first to 3 Nm and then to 6 Nm.",
        "make flange-nuts torque=6 pattern=cross",
    ),
    // What is only compared with is not the load.
    ("Go to minimum load, CO2 lower than at full load.", "start min"),
    // The figure is of the last that is read.
    (
        "Note any fault code and the cold pressure, 1.0 to 1.4 bar.",
        "read reading=\"cold pressure|1.0..1.4 bar\"",
    ),
];
