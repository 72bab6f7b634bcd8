//! At least three ways to say each kind of test; said on an appliance with water, gas, mains and condensate.

/// What was written before: circuits and joints of every kind that the tests speak of.
pub(super) const BEFORE: &str = "Switch off at the wall isolator.|Close the gas cock.|Undo the gas union.|Undo the earth terminal of the fan.|\
     Close the flow valve and the return valve of the heating.|Undo the heating union.|Take off the condensate trap.";

/// The kind in notation, and phrases for it.
pub(super) const TESTS: &[(&str, &[&str])] = &[
    (
        "earth-continuity",
        &[
            "Check the earth continuity.",
            "Measure the resistance between the earth terminal and the case, not more than 0.1 ohm.",
            "Check with the ohmmeter between the earth terminal and the fan.",
            "Test the continuity of the earth.",
        ],
    ),
    (
        "insulation",
        &[
            "Measure the insulation resistance.",
            "Test the insulation.",
            "Check the insulation at 500 V, at least 1 megohm.",
        ],
    ),
    ("polarity", &["Check the polarity.", "Test the polarity at the spur.", "Do a polarity test."]),
    (
        "tightness",
        &[
            "Test the gas pipes for tightness.",
            "Carry out a tightness test of the gas.",
            "Do a soundness test.",
            "Test the gas pipework at the meter, 20 mbar for 2 minutes.",
            "Open the gas cock and test for 2 minutes: no drop.",
        ],
    ),
    (
        "leak-fluid",
        &[
            "Spray the gas union with leak detection fluid.",
            "Check the gas union with leak detection spray.",
            "Go round the gas union with the gas detector.",
            "Check the gas union for leaks.",
        ],
    ),
    (
        "working-pressure",
        &[
            "Check the working pressure, 18 to 22 mbar.",
            "Measure the working pressure at full load.",
            "Measure the inlet pressure at full load.",
            "Test the dynamic pressure.",
        ],
    ),
    (
        "gas-rate",
        &["Check the gas rate.", "Measure the gas rate at the meter.", "Test the gas rate for 2 minutes."],
    ),
    (
        "combustion",
        &[
            "Do a combustion test at maximum.",
            "Measure CO2 and CO at full load.",
            "Analyse the flue gas.",
            "Check the combustion.",
            "Note CO2 and CO at full load.",
        ],
    ),
    (
        "flue-integrity",
        &[
            "Test the integrity of the flue.",
            "Check the flue for integrity.",
            "Measure O2 in the air duct, at least 20.6 %.",
        ],
    ),
    (
        "fill-pressure",
        &[
            "Check the fill pressure, 1.0 to 1.5 bar.",
            "Check the filling pressure.",
            "Check the cold pressure of the heating.",
        ],
    ),
    (
        "leak-cold",
        &[
            "Check the heating union for leaks.",
            "Look for leaks at the heating union.",
            "See that the heating union is dry.",
            "Feel round the heating union with dry tissue.",
            "Check that the heating union does not drip.",
        ],
    ),
    (
        "leak-hot",
        &[
            "Check the heating union for leaks while it is hot.",
            "Go over the heating union with tissue while it is hot.",
            "Look for leaks at the heating union while it is warm.",
        ],
    ),
    (
        "trap-filled",
        &[
            "Check that the trap is filled.",
            "See that the trap is full of water.",
            "Make sure that the trap is filled.",
        ],
    ),
    (
        "relief-lever",
        &[
            "Lift the lever of the relief valve.",
            "Turn the knob of the safety valve.",
            "Operate the relief valve.",
            "Test the safety valve.",
        ],
    ),
    (
        "pressure-hold",
        &["Do a strength test with nitrogen.", "Test with nitrogen, 10 bar.", "Carry out a strength test."],
    ),
    ("vacuum-hold", &["Check that the vacuum holds.", "Test the vacuum.", "Do a vacuum test."]),
    (
        "function",
        &[
            "Check that the boiler works.",
            "Do a function test.",
            "Check that the boiler starts and stops.",
            "Make sure that the boiler works.",
        ],
    ),
];

/// Sentences that speak of tests and tell of none, or of another.
pub(super) const NO_TESTS: &[&str] = &[
    "Check the tester on the proving unit.",
    "Do not spray the electrode with water.",
    "Check that the right parts are in the box.",
    "The gas rate must not change.",
    "It is normal that the heating union weeps a little.",
    "Close the test point again.",
];
