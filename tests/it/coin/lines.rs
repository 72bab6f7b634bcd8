//! Single sentences, what each makes, and the actions that it says.

/// Lines typed one after the other, split at "|", what the last one makes, and its actions.
pub(super) const LINES: &[(&str, &str, &str)] = &[
    // Isolators, with their circuits.
    ("Close the gas valve.", "Circuit gas · Section appliance gas · Isolator gas valve", "isolate gas-valve"),
    (
        "Switch off at the wall isolator and lock it off.",
        "Circuit mains · Section appliance mains · Isolator wall isolator",
        "shutdown · isolate wall-isolator · lock wall-isolator",
    ),
    ("Close the gas cock.|Close the gas cock.", "", "isolate gas-cock"),
    ("Close the gas cock.|Open the cock.", "", "restore gas-cock"),
    (
        "Unplug the boiler at the wall socket.",
        "Circuit mains · Section appliance mains · Isolator wall socket",
        "isolate wall-socket",
    ),
    (
        "Pull the mains plug.",
        "Circuit mains · Section appliance mains · Isolator mains plug",
        "isolate mains-plug",
    ),
    ("Remove the fuse.", "Circuit mains · Section appliance mains · Isolator fuse", "isolate fuse"),
    (
        "Switch off the circuit breaker.",
        "Circuit mains · Section appliance mains · Isolator circuit breaker",
        "isolate circuit-breaker",
    ),
    (
        "Close the ball valve to the compressed air ring main.",
        "Circuit compressed air · Section air pipes · Isolator ball valve",
        "isolate ball-valve",
    ),
    (
        "Close both heating valves.",
        "Circuit heating · Section heating system · Isolator heating valve 1 · Isolator heating valve 2",
        "isolate heating-valve-1 heating-valve-2",
    ),
    (
        "Close the two pump valves.",
        "Circuit heating · Section heating system · Component pump · Section pump body · Isolator pump valve 1 · \
         Isolator pump valve 2",
        "isolate pump-valve-1 pump-valve-2",
    ),
    ("Close the two pump valves.|Open the heating pump valves.", "", "restore pump-valve-1 pump-valve-2"),
    (
        "Close the gas cock.|Close the cold water stop tap.",
        "Circuit domestic water · Section water pipes · \
         Isolator cold water stop tap",
        "isolate cold-water-stop-tap",
    ),
    // Components.
    ("Take the cover off.", "Component cover", "remove cover"),
    ("Take the cover off.|Refit the cover.", "", "fit cover"),
    ("Swing the door aside.", "Component door", "aside door"),
    ("Take out the siphon and clean it.", "Component siphon", "remove siphon · clean siphon"),
    // Proofs: the pairs and the known source that the words name, with the limits of the kind.
    (
        "Switch off at the wall switch.|Prove the mains dead: tester on the known source, L to N, L to E and N to E 0 V to 5 V each, known source again.",
        "",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\" \
         reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\" \
         reading=\"tester on the known source again||shows live\"",
    ),
    // No pair and no second test of the tester that was not said; the volts of a source are not a limit.
    (
        "Switch off at the wall switch.|Prove the mains dead: L and N to E 0 V to 5 V.",
        "",
        "prove mains reading=\"N to E|0..5 V\"",
    ),
    (
        "Switch off at the wall switch.|Prove the mains dead: tester on a known source 230 V, L to N 0 V to 5 V.",
        "",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\"",
    ),
    (
        "Switch off at the wall switch.|Prove the mains dead: tester on a known source, after 5 min L to N 0 V to 5 V.",
        "",
        "prove mains reading=\"tester on a known source||shows live\" reading=\"L to N|0..5 V\"",
    ),
    ("Renew the siphon.", "Component siphon", "remove siphon · fit siphon new"),
    ("Replace the old fan.", "Component fan", "remove fan · fit fan new"),
    ("Take out the siphon.|Replace the siphon.", "", "fit siphon new"),
    ("Fit the new pump.", "Component pump", "fit pump new"),
    ("Clean the heat exchanger with a soft brush.", "Component heat exchanger", "clean heat-exchanger"),
    ("Take off the case.|Lift out the fan, 4 kg, from behind the case.", "Component fan", "remove fan"),
    // Fixings.
    (
        "Take off the belt guard: four M6 screws, 10 mm.",
        "Component belt guard · Connection belt guard screws",
        "undo belt-guard-screws · remove belt-guard",
    ),
    (
        "Undo the four M6 screws and take off the front panel.",
        "Component front panel · Connection front panel screws",
        "undo front-panel-screws · remove front-panel",
    ),
    (
        "Remove the four fixing screws and lift off the lid, then undo the two M4 screws of the circuit board.",
        "Component lid · Connection lid fixing screws · Component circuit board · Connection circuit board screws",
        "undo lid-fixing-screws · remove lid · undo circuit-board-screws",
    ),
    (
        "Undo two of the four cover screws.",
        "Component cover · Connection cover screws",
        "undo cover-screws 2",
    ),
    ("Undo two of the four cover screws.|Undo the other two cover screws.", "", "undo cover-screws 2"),
    (
        "Undo both bolts of the fan bracket, 8 mm.",
        "Component fan bracket · Connection fan bracket bolts",
        "undo fan-bracket-bolts",
    ),
    (
        "Pull out the clip and take out the flow sensor.",
        "Component flow sensor · Connection flow sensor clip",
        "undo flow-sensor-clip · remove flow-sensor",
    ),
    // Joints.
    (
        "Turn the gas cock off.|Undo the union nut of the gas valve, G 3/4, 30 mm.",
        "Component gas valve · Seal washer G 3/4 · Connection gas valve union nut",
        "undo gas-valve-union-nut",
    ),
    (
        "Close the two pump valves.|Undo the two union nuts of the pump, G 1, 37 mm.",
        "Seal washer G 1 · Connection pump union nuts",
        "undo pump-union-nuts",
    ),
    (
        "Close the two pump valves.|Undo the two union nuts of the pump.|Make the unions with new washers.",
        "",
        "make pump-union-nuts seal=new",
    ),
    ("Close the gas cock.|Undo the gas union.", "Seal washer · Connection gas union", "undo gas-union"),
    // Plugs, ports, temporary items, settings, and the kinds above in other words.
    (
        "Turn off the mains at the isolator, lock it and hang a notice on it.",
        "Circuit mains · Section appliance mains · Isolator isolator · Temporary notice",
        "shutdown · isolate isolator · lock isolator · place notice",
    ),
    (
        "Switch off the boiler at the main switch and take the fuse out.",
        "Circuit mains · Section appliance mains · Isolator main switch · Isolator fuse",
        "shutdown · isolate main-switch · isolate fuse",
    ),
    (
        "Unplug the fan.|Switch off at the wall switch.",
        "Isolator wall switch",
        "shutdown · isolate wall-switch",
    ),
    (
        "Close both valves at the pump.",
        "Circuit heating · Section heating system · Component pump · Section pump body · Isolator pump valve 1 · Isolator pump valve 2",
        "isolate pump-valve-1 pump-valve-2",
    ),
    (
        "Close the valve on the return.",
        "Circuit heating · Section heating system · Isolator return valve",
        "isolate return-valve",
    ),
    (
        "Close the isolating valve of the gas pipe.",
        "Circuit gas · Section appliance gas · Isolator gas pipe isolating valve",
        "isolate gas-pipe-isolating-valve",
    ),
    ("Close the gas cock.|Close the second gas cock.", "Isolator second gas cock", "isolate second-gas-cock"),
    (
        "Close the flow valve and the return valve of the heating and lock them.",
        "Circuit heating · Section heating system · Isolator flow valve · Isolator return valve",
        "isolate flow-valve return-valve · lock flow-valve return-valve",
    ),
    ("Close the oil valve.|Undo the oil hose, 19 mm.", "Connection oil hose", "undo oil-hose"),
    (
        "Close the gas cock of the boiler.",
        "Circuit gas · Section appliance gas · Isolator gas cock",
        "isolate gas-cock",
    ),
    (
        "Remove the burner plug and lift the burner out, 6 kg.",
        "Component burner · Circuit mains · Section appliance mains · Isolator mains feed, not named yet · Connection burner plug",
        "undo burner-plug · remove burner",
    ),
    (
        "Take off the left side panel. Take off the right side panel.",
        "Component left side panel · Component right side panel",
        "remove left-side-panel · remove right-side-panel",
    ),
    (
        "Take off the front panel: 2 screws. Take off the side panel: 3 screws.",
        "Component front panel · Connection front panel screws · Component side panel · Connection side panel screws",
        "undo front-panel-screws · remove front-panel · undo side-panel-screws · remove side-panel",
    ),
    (
        "Unlatch the two catches and swing the door aside.",
        "Component door · Connection door catches",
        "undo door-catches · aside door",
    ),
    (
        "Undo four screws of the lid, M5, 8 mm, and lift the lid off.",
        "Component lid · Connection lid screws",
        "undo lid-screws · remove lid",
    ),
    ("Undo the three screws of the fan.|Undo two of the three fan screws.", "", "undo fan-screws 2"),
    ("Loosen the clip of the hose.", "Component hose · Connection hose clip", "slacken hose-clip"),
    ("Remove the spring clip.", "Connection spring clip", "undo spring-clip"),
    (
        "Close the gas cock.|Take off the burner: four nuts, M6, 10 mm; gasket, always new.",
        "Component burner · Seal gasket · Connection burner nuts",
        "undo burner-nuts · remove burner",
    ),
    (
        "Unplug the fan.",
        "Component fan · Circuit mains · Section appliance mains · Isolator mains feed, not named yet · Connection fan plug",
        "undo fan-plug",
    ),
    ("Unplug the fan.|Plug in the fan.", "", "make fan-plug"),
    (
        "Unplug the flow sensor.",
        "Component flow sensor · Connection flow sensor plug",
        "undo flow-sensor-plug",
    ),
    (
        "Unplug the ignition lead.",
        "Circuit mains · Section appliance mains · Isolator mains feed, not named yet · Connection ignition lead",
        "undo ignition-lead",
    ),
    (
        "Unplug both leads from the gas valve.",
        "Component gas valve · Circuit mains · Section appliance mains · Isolator mains feed, not named yet · Connection gas valve leads",
        "undo gas-valve-leads",
    ),
    (
        "Disconnect the burner plug.",
        "Component burner · Circuit mains · Section appliance mains · Isolator mains feed, not named yet · Connection burner plug",
        "undo burner-plug",
    ),
    (
        "Disconnect the sensing hose from the fan.",
        "Component fan · Connection fan sensing hose",
        "undo fan-sensing-hose",
    ),
    (
        "Disconnect the earth lead from the case.",
        "Component case · Circuit mains · Section appliance mains · Isolator mains feed, not named yet · Connection case earth lead",
        "undo case-earth-lead",
    ),
    (
        "Prove dead at the three motor terminals, all three pairs, 0 to 5 V.",
        "Component motor · Circuit mains · Section appliance mains · Isolator mains feed, not named yet · Connection motor terminals",
        "prove appliance-mains at=motor-terminals reading=\"L to N|0..5 V\" reading=\"L to E|0..5 V\" reading=\"N to E|0..5 V\"",
    ),
    (
        "Close both heating valves.|Drain the heating at the drain cock into the bucket.",
        "Connection drain cock",
        "release heating what=pressure by=drain through=drain-cock to=bucket",
    ),
    (
        "With the air vent of the heating open, drain the heating at the drain cock into a bucket.",
        "Circuit heating · Section heating system · Connection air vent · Connection drain cock",
        "release heating-system what=pressure by=drain through=drain-cock vent=air-vent to=bucket",
    ),
    (
        "Close both heating valves.|Vent the heating at the air vent.",
        "Connection air vent",
        "release heating what=pressure by=vent through=air-vent",
    ),
    ("Close the cold water valve.|Open the drain tap.", "Connection drain tap", "undo drain-tap"),
    (
        "Open the vent on the radiator.",
        "Circuit heating · Section heating system · Connection vent",
        "undo vent",
    ),
    (
        "Close the gas cock.|Open the test point of the gas valve, 3 mm.|Connect the manometer to the test point.",
        "Temporary manometer",
        "place manometer",
    ),
    (
        "Close the gas cock.|Connect the manometer to the gas test point.",
        "Connection gas test point · Temporary manometer",
        "place manometer",
    ),
    (
        "Undo the flue sampling cap.",
        "Circuit air and flue · Section flue ways · Connection flue sampling cap",
        "undo flue-sampling-cap",
    ),
    (
        "Release the steam pressure at the vent valve.",
        "Circuit steam · Section steam pipes · Isolator steam feed, not named yet · Connection vent valve",
        "release steam what=pressure by=vent through=vent-valve",
    ),
    (
        "Open the drain valve under the compressed air receiver until the gauge reads 0 to 0.1 bar.",
        "Circuit compressed air · Section air pipes · Isolator compressed air feed, not named yet · Connection drain valve",
        "release air-pipes what=pressure by=drain through=drain-valve · prove air-pipes reading=\"gauge|0..0.1 bar\"",
    ),
    (
        "Close the gas cock.|Undo the gas union.|Cap the gas union.",
        "Temporary gas union cap",
        "place gas-union-cap",
    ),
    (
        "Close the gas cock. Undo the gas union, bond it and cap it.",
        "Circuit gas · Section appliance gas · Isolator gas cock · Seal washer · Connection gas union · Temporary gas union bond · Temporary gas union cap",
        "isolate gas-cock · undo gas-union · place gas-union-bond · place gas-union-cap",
    ),
    ("Place a tray under the siphon.", "Temporary tray", "place tray"),
    ("Put a blank on the pipe.", "Temporary blank", "place blank"),
    ("Hang a notice on the wall isolator.", "Temporary notice", "place notice"),
    ("Write down the pump speed.", "Component pump · Setting pump speed", "record pump-speed"),
    (
        "Set the gas valve throttle to 3.",
        "Component gas valve · Setting gas valve throttle",
        "set gas-valve-throttle to=3",
    ),
    ("Note the position of the throttle.", "Setting throttle position", "record throttle-position"),
    ("Undo the gas union.|Close the gas cock.", "Isolator gas cock", "isolate gas-cock"),
    (
        "Close the two pump valves and undo the two pump unions.",
        "Circuit heating · Section heating system · Component pump · Section pump body · Isolator pump valve 1 · Isolator pump valve 2 · Seal washer · Connection pump unions",
        "isolate pump-valve-1 pump-valve-2 · undo pump-unions",
    ),
    (
        "Close the heating valve.|Undo the union nut of the pump, G 1.|Undo the union nut of the flow sensor, G 3/4.",
        "Component flow sensor · Seal washer G 3/4 · Connection flow sensor union nut",
        "undo flow-sensor-union-nut",
    ),
    (
        "Close the heating valve.|Undo the lower pump union and the upper pump union.",
        "Component pump · Seal washer · Connection lower pump union · Connection upper pump union",
        "undo lower-pump-union upper-pump-union",
    ),
    (
        "Remove the flue hood: three screws, 8 mm; rope seal.",
        "Component flue hood · Circuit air and flue · Section flue ways · Seal rope seal · Connection flue hood screws",
        "undo flue-hood-screws · remove flue-hood",
    ),
    (
        "Undo the two left cover screws.",
        "Component left cover · Connection left cover screws",
        "undo left-cover-screws",
    ),
    (
        "Close the gas isolation valve and the water isolation valve.",
        "Circuit gas · Section appliance gas · Isolator gas isolation valve · Circuit domestic water · \
         Section water pipes · Isolator water isolation valve",
        "isolate gas-isolation-valve water-isolation-valve",
    ),
];
