//! Six more jobs: five in careful sentences, one as talk. What a person expects of each line, written like `table`; behind
//! the verbs of a word stands what is in the name of the thing, one of several words, parted by strokes.
//!
//! Written down by people who had not seen the recogniser, with what a colleague would understand; the expectations
//! follow that. Much of it is not heard, and nothing of it may be heard falsely.

/// The scripts in `further/` with a line for each of theirs.
pub(super) const SCRIPTS: &[(&str, &str, &[&str])] = &[
    ("expansion-vessel", include_str!("further/expansion-vessel.txt"), EXPANSION_VESSEL),
    ("circulator-and-filter", include_str!("further/circulator-and-filter.txt"), CIRCULATOR_AND_FILTER),
    ("gas-control", include_str!("further/gas-control.txt"), GAS_CONTROL),
    ("coil-valve", include_str!("further/coil-valve.txt"), COIL_VALVE),
    ("softener", include_str!("further/softener.txt"), SOFTENER),
    ("burner-gaskets", include_str!("further/burner-gaskets.txt"), BURNER_GASKETS),
];

const EXPANSION_VESSEL: &[&str] = &[
    "tell ?ask|tell",
    // The fuse goes along in place of a lock.
    "shutdown isolate:spur/boiler ?remove|isolate|lock:fuse/spur",
    "isolate:gas/cock wait|hold|read ?read",
    // The hooks hold it and are not undone.
    "undo|remove:screw remove:cover",
    "?place:tray",
    "aside:box undo|remove:lid/clip ?remove:lid prove",
    // The clips stay.
    "?inspect:seal/chamber",
    "isolate:flow isolate:return",
    "place|make:hose ?place:bucket release|undo ?undo:drain/cock ?read",
    "remove|undo:cap release",
    // Nothing is unplugged yet.
    "photograph",
    // The plugs are those of the pump and of the pressure sensor.
    "undo:plug/pump/sensor ?undo:plug/pump/sensor",
    "undo|remove:tube place:tape/tube",
    "place:cloth ?place:cloth slacken|undo:nut/union/hose remove:hose",
    // Replaced only if it is bad.
    "inspect:hose",
    "?hold undo|remove:screw/bracket ?remove|aside:bracket remove:vessel",
    // The O-ring is picked out only if it stayed behind.
    "undo|remove:vent ?remove:vent",
    "clean:face/pump/housing ?clean:face/hose/connection",
    // Nothing is installed yet, nothing pumped up.
    "read",
    "fit:vessel fit|make:bracket tighten|make:screw",
    "fit|make:hose make|tighten:nut/union/hose ?tighten|make:nut/union/hose",
    "fit|make:vent ?make|tighten:vent",
    // A cap that is opened for good, not taken away.
    "undo|slacken:cap/vent",
    "take|remove|undo:tape/tube make|fit:tube ?inspect:tube",
    "make:pump/plug/connector make:sensor/plug/connector ?fit|place:tie/cable",
    "make|isolate:drain/cock take|undo|remove:hose restore:flow restore:return",
    "charge purge undo|take|remove:loop",
    "wait test|inspect:union/nut/joint/vent ?test|inspect:vent/foot/union ?read|test",
    // The box comes back from where it was swung to.
    "make|fit:lid/clip ?make|fit:lid fit|make:box fit|restore:fuse/spur restore:spur",
    "restore:gas/cock test|inspect:joint/cock/gas start",
    // The precharge is checked again only if the pressure climbs.
    "wait|hold|start|read read ?read",
    "fit:cover make|fit|tighten:screw/cover record|read ?record|read",
];

const CIRCULATOR_AND_FILTER: &[&str] = &[
    "shutdown|set wait isolate:isolator lock|place:isolator/padlock",
    "undo|remove:screw remove:panel ?place:cup",
    "prove",
    // The pipes stay closed.
    "",
    "photograph",
    "wait|hold|read ?read read|record ?record",
    "isolate:flow isolate:return isolate:buffer",
    "place|make:hose release|undo ?undo:drain/cock",
    "undo:vent ?release",
    // The lever shows that no pressure is left.
    "?read release|prove|test|undo ?prove",
    "place:cloth place:tray",
    "undo:plug/mains/circulator undo:plug/signal/circulator",
    "undo|remove:clip aside|remove|undo:sensor ?aside:sensor",
    "?undo|remove:tie",
    "remove:shell/insulation",
    "slacken|undo:nut/union ?undo:nut/union ?hold remove:circulator ?remove:gasket",
    "clean:face inspect:face",
    "undo|remove:cap/filter ?remove:cap remove:strainer remove:magnet",
    "clean:strainer ?clean:strainer clean:magnet",
    // A strainer goes in, the old or a new one.
    "?inspect:mesh/strainer ?fit:strainer",
    "fit|make:magnet make|fit|tighten:cap/filter ?make|tighten:cap/filter",
    "undo:switch/plug undo|remove:switch ?remove:switch ?inspect|test:paddle/switch fit|make:switch ?make|fit:switch",
    "fit:circulator",
    "make|tighten:nut/union ?tighten|make:nut/union",
    "fit|make:sensor make|fit:clip/sensor",
    "make:switch/plug make:cable/plug/circulator ?make:cable/plug/circulator ?fit|place|make:tie/harness",
    "make|isolate:drain/cock take|undo|remove:hose restore:valve/flow/return/buffer restore:valve/flow/return/buffer restore:valve/flow/return/buffer",
    // Topped up only if the pressure has dropped.
    "charge purge make|isolate:vent",
    "test|inspect:union/cap/filter/switch/joint ?test|inspect:union/cap/filter/switch ?test|inspect:union/cap/filter/switch ?wait",
    "fit|make:shell/insulation take|remove:tray take|remove:cloth fit:panel make|fit|tighten:screw/panel",
    "?take|undo|remove:lock restore:isolator start|purge|wait ?wait ?purge",
    // What comes next is only named; nobody cleans the filter now.
    "tell ?tell ?test ?read|test",
];

const GAS_CONTROL: &[&str] = &[
    "tell ?ask|tell",
    "shutdown isolate:gas/cock place:tag/lever/cock",
    "isolate:inlet release|undo ?undo:tap",
    "wait remove|undo:knob",
    "undo|remove:screw remove:case ?place:tray",
    "photograph undo:lead/ignition ?undo:lead/ignition",
    "undo:plug/sensor undo|remove:screw remove:sensor",
    "slacken|undo:screw/nipple release make|tighten:screw/nipple",
    "slacken|undo:nut/thermocouple ?undo:nut/thermocouple aside:lead/thermocouple",
    "undo:nut/tube remove:tube undo:pilot/tube",
    // The plug closes the pipe for the time of the job.
    "?hold undo:union ?discard place:plug/pipe",
    "undo|remove:screw remove:burner/assembly/manifold",
    "undo|remove:screw remove:valve",
    "undo|remove:injector ?remove:injector ?remove:washer",
    "clean:bar/burner/lint ?clean inspect:bar/burner",
    // Nothing is fitted yet.
    "?inspect|read",
    "fit|make:injector ?make|tighten:injector ?tighten:injector",
    // The O-ring belongs to the joint; the valve is not fitted yet.
    "clean:face",
    "fit:valve make|tighten:screw",
    "fit:burner/assembly make|tighten:screw",
    "take|remove|undo:plug make|tighten:union ?hold",
    "make|fit:pilot/tube make|fit:sensing/tube ?make|tighten:nut",
    "clean:tip/thermocouple make|fit|tighten:nut/thermocouple",
    "fit|make:sensor make:sensor/plug make|fit:lead/ignition ?make|fit:lead/ignition",
    "read ?set ?read",
    "restore:inlet purge ?test|inspect:joint",
    "take|remove:tag restore:gas/cock test|inspect:joint",
    // The nipple is opened for the manometer.
    "test place|make:manometer/nipple ?undo:nipple start",
    "set|read ?read take|remove|undo:gauge/manometer make|tighten:nipple",
    // The heater runs already.
    "undo|remove|aside:thermocouple test|read fit|make:thermocouple",
    "fit|make:case make|fit|tighten:screw fit|make:knob test",
    // What she is to do is told, not done.
    "tell",
];

const COIL_VALVE: &[&str] = &[
    "tell|ask shutdown wait",
    "isolate:fan/isolator isolate:supply/control lock:fan/isolator lock:supply/control place:tag ?place:tag",
    // The cover is not opened yet.
    "wait",
    "remove:cover undo|remove:screw prove ?read",
    "isolate:flow isolate:return isolate:bypass isolate:regulating record|read ?record|read",
    "wait|hold|read ?read",
    "undo:catch/panel remove:panel",
    "remove:guard undo|remove:bolt slacken|undo:rail remove:belt",
    "?inspect:belt",
    "undo:tube ?undo:tube",
    "undo:capillary/thermostat/clip aside:capillary/thermostat",
    "place:sheet place|make:hose release ?undo:drain/cock ?place:bucket undo:vent",
    // The vent stays open.
    "?wait make|isolate:drain/cock",
    "undo:core/cable/terminal remove|aside|undo:cable",
    "?set undo|remove:clip undo|remove:nut",
    "remove|discard:actuator ?discard",
    // The new body is not fitted yet.
    "photograph",
    "?hold undo:nut/union remove:body/valve",
    "clean:face/union ?clean:face/union ?remove:gasket",
    // "Both" are the cap and the basket.
    "clean:strainer/basket ?clean:strainer/basket undo|remove:cap ?remove:basket/strainer fit|make:basket/strainer make|fit:cap",
    "fit:body/valve make|tighten:nut/union ?tighten|make:nut/union",
    "inspect|test:stem/valve",
    "fit:actuator make|tighten:nut make|fit:clip",
    "fit|make:cable/actuator make:core/cable/terminal make|tighten:gland",
    "restore:return restore:flow restore:bypass purge make|isolate:vent",
    // A union is nipped up only if it weeps.
    "restore|set:regulating/valve/turn charge test|inspect:union/joint ?wait",
    "make|fit:capillary/thermostat make|fit:tube ?make|fit:tube",
    "fit:belt ?set|tighten ?read make|tighten:bolt/rail",
    "fit:guard make|fit|tighten:bolt ?take:tool/rag ?take:rag fit|make:panel ?inspect:seal/panel",
    "fit|make:cover make|fit|tighten:screw/cover ?take|undo|remove:lock ?take|undo|remove:lock take|remove:tag ?take|remove:tag restore:supply/control restore:isolator/fan",
    "test|read|set ?test|read|inspect ?test|read|inspect",
    // No proof that something is dead.
    "test|inspect:thermostat set|start tell ?finish",
];

const SOFTENER: &[&str] = &[
    "tell ?ask|tell",
    // Two levers shut off one device.
    "isolate:bypass/lever ?isolate:bypass/lever ?test|inspect|read",
    // The pressure goes by itself while one waits.
    "start|set wait|hold|release ?wait|hold|release",
    "isolate|undo:adaptor/socket/plug undo:plug/adaptor/board place:tag/lead",
    "undo|remove:screw remove:cover ?place:tray",
    "photograph",
    "undo:plug/motor undo|remove:sensor ?remove:sensor",
    "slacken|undo:nut undo|remove|aside:tube/line place:cap/tube/line/end",
    "?place:bucket slacken|undo:clip undo|remove:hose",
    // The strap wrench is for a stuck one.
    "undo|remove:control ?remove:control",
    "remove:washer ?record|inspect ?discard",
    "remove|undo:clip aside|remove|undo:bypass",
    "undo|remove:screw undo|remove|aside:rod/piston remove:bracket ?remove:motor",
    "undo|remove:retainer ?remove:retainer remove:piston",
    "remove:seal/spacer ?remove:spacer/seal ?place:cloth",
    "clean:bore clean:spacer",
    // A new one only if it is scratched.
    "?inspect:piston",
    // Here the seals are the parts that go in.
    "fit:seal/spacer ?fit:spacer/seal",
    "fit:piston make|tighten|fit:retainer",
    "make|fit:rod/piston fit:bracket make|tighten:screw",
    // The new O-rings belong to the joint.
    "?remove:ring ?discard",
    "fit|make:bypass make|fit:clip",
    "clean:housing/control ?inspect|read",
    "fit:washer make|fit|tighten:control ?make|tighten:control",
    "make|fit:hose make|fit|tighten:clip/hose ?set",
    // Trimmed only if it is scored.
    "?fit:ferrule ?fit:insert make|tighten:nut",
    "make|fit:sensor make:plug/motor ?inspect:lead",
    "restore:inlet/lever/bypass wait|purge ?wait|purge ?restore:inlet restore:outlet",
    // A wet joint alone is done again.
    "?wait test|inspect:joint",
    "take|remove:tag make:adaptor/plug/board restore|make:adaptor/plug/socket read|test",
    "test|set|start ?test|inspect|read read|test ?set|start",
    "fit:cover make|fit|tighten:screw set read|test",
];

const BURNER_GASKETS: &[&str] = &[
    // The fuse in the pocket stands for a lock.
    "shutdown isolate:spur remove|isolate:fuse/spur ?lock:fuse/spur",
    "isolate:gas/cock place:tag/cock",
    "wait ?read",
    "?inspect:flue ?inspect:case/bottom",
    "undo|remove:screw remove:cover ?place:tray",
    "undo|remove:clip/lid remove:lid",
    "prove|read ?read",
    // Two plugs on one fan.
    "undo:fan/plug ?undo:fan/plug",
    "undo|remove:lead/ignition undo|remove:earth/wire",
    // The other end stays on.
    "undo:tube ?aside:tube",
    // Blown through only if it is wet.
    "inspect:tube",
    "undo:union ?hold ?discard",
    "slacken|undo:clip remove|undo|aside:pipe",
    // One assembly.
    "undo:nut/door remove:door/burner/fan/assembly ?remove:fan ?remove:venturi ?remove:burner ?place:sheet",
    "?inspect:insulation",
    "undo|remove:screw/electrode remove:electrode",
    "?remove:gasket ?remove:gasket ?discard clean:groove",
    "clean:coil/exchanger ?clean:coil/exchanger ?clean:coil/exchanger",
    "place:bucket undo|remove:cup/trap ?remove:cup ?release clean:cup/trap",
    "make|fit:cup/trap charge",
    "fit:electrode make|fit|tighten:screw/electrode",
    "set|read ?set|read ?read",
    // The gasket belongs to the joint of the door.
    "",
    "fit:door/burner make|fit:nut ?tighten|make:nut ?tighten:nut",
    "fit|make:pipe make|tighten:clip",
    "make|tighten:union ?hold",
    // Cut only if it has gone hard.
    "make|fit:tube",
    "make:fan/plug ?make:fan/plug make|fit:earth/wire make|fit:lead/ignition ?inspect:lead",
    // Shut again only if there are bubbles.
    "restore:gas/cock test|inspect:union/joint ?test|inspect:valve/inlet ?wait",
    "fit|make:lid make|fit:clip/lid fit:cover make|fit|tighten:screw",
    // What is switched on may be the spur or the boiler.
    "fit|restore:fuse/spur restore|start start|set ?start|set wait|hold ?place:analyser ?undo:flue/point test|read ?test|read ?test|read ?test|read ?set|start",
    "read|test|inspect inspect|test|read ?record tell",
];
