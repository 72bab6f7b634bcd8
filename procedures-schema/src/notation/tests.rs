//! Laws of the notation, lines that must be read, lines that must not, and how actions are shown.

use super::{Detail, Form, GRAMMAR, Problem, line, parse, parse_written, print, print_written, shown};
use crate::model::{
    Action, ApplianceMap, Component, Connection, Energy, Family, Grouping, Id, Known, Means, Mode, Reading,
    Renewal, Rest, Seal, SealPolicy, SealUse, Size, TestKind, Tight, Verb,
};
use crate::units::{Figure, Measured, Range, Unit};

/// A small generator of numbers with a fixed seed (xorshift64).
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    fn below(&mut self, n: usize) -> usize {
        usize::try_from(self.next() % n as u64).expect("small")
    }

    fn one_in(&mut self, n: usize) -> bool {
        self.below(n) == 0
    }

    fn one_of<T: Clone>(&mut self, list: &[T]) -> T {
        list[self.below(list.len())].clone()
    }

    /// A text that tries the quotation marks.
    fn text(&mut self) -> String {
        const PIECES: &[&str] = &[
            "va",
            "vb",
            "head",
            "12",
            "new",
            "same",
            "max",
            "safe",
            "unattended",
            "·",
            " ",
            "\"",
            "\\",
            "=",
            "[",
            "]",
            "|",
            "?",
            ";",
            ",",
            "\n",
            "\t",
            "-",
            "..",
            "ü",
            "30s",
            "test",
            "yes",
            "\u{a0}",
            "n",
        ];
        let n = self.below(4);
        (0..n).map(|_| self.one_of(PIECES)).collect()
    }

    fn id(&mut self) -> Id {
        Id::new(&self.text())
    }

    fn figure(&mut self) -> Figure {
        Figure::parse(self.one_of(&["0", "5", "-3", "0.10", "12.5", "900", "-0.0"])).expect("a figure")
    }

    fn unit(&mut self) -> Unit {
        if self.one_in(6) {
            return Unit::Other(self.one_of(&["furlong", "[hnsf'U]", "{count}", "e3"]).into());
        }
        self.one_of(Unit::ALL)
    }

    fn measured(&mut self) -> Measured {
        Measured::new(self.figure(), self.unit())
    }

    fn range(&mut self) -> Range {
        let mut end = || (!self.one_in(3)).then(|| self.figure());
        let (min, max) = (end(), end());
        Range::new(min, max, self.unit())
    }

    fn reading(&mut self) -> Reading {
        Reading {
            what: self.text(),
            limits: self.one_in(2).then(|| self.range()),
            seen: self.text(),
            source: self.text(),
            ..Reading::default()
        }
    }

    fn renewal(&mut self) -> Renewal {
        self.one_of(&[Renewal::New, Renewal::Same, Renewal::Other("re machined \"x\"".into())])
    }

    /// Gives the action a value for a detail.
    fn fill(&mut self, detail: Detail, action: &mut Action) {
        match detail {
            Detail::Count => action.count = Some(self.one_of(&[0, 1, 3, u32::MAX])),
            Detail::Test => action.test = Some(self.test()),
            Detail::Part => action.part = Some(self.renewal()),
            Detail::Seal => action.seal = Some(self.renewal()),
            Detail::Torque => action.torque = Some(self.range()),
            Detail::Pattern => action.pattern = Some(self.text()),
            Detail::What => action.what = Some(self.one_of(&[Energy::Heat, Energy::Other("light".into())])),
            Detail::By => action.by = Some(self.one_of(Means::ALL)),
            Detail::Through => action.through = Some(self.id()),
            Detail::Vent => action.vent = Some(self.id()),
            Detail::At => action.at = Some(self.id()),
            Detail::With => action.with = Some(self.text()),
            Detail::To => action.to = Some(self.text()),
            Detail::Mode => action.mode = Some(self.mode()),
            Detail::Temperature => action.temperature = Some(self.measured()),
            Detail::Duration => action.duration = Some(self.measured()),
            Detail::AtMost => action.at_most = Some(self.measured()),
            Detail::Until => action.until = Some(self.id()),
            Detail::Unattended => action.unattended = true,
            Detail::Live => action.live = true,
            Detail::Criterion => action.criterion = Some(self.text()),
            Detail::Ask => action.ask = Some(self.id()),
            Detail::Text => action.text = Some(self.text()),
            Detail::Reason => action.reason = Some(self.text()),
            Detail::OneOf => action.one_of = true,
            Detail::WithNew => action.with_new = (0..self.below(3)).map(|_| self.id()).collect(),
            Detail::Readings => action.readings = (0..self.below(3)).map(|_| self.reading()).collect(),
        }
    }

    fn test(&mut self) -> TestKind {
        if self.one_in(8) { TestKind::Other("some new test".into()) } else { self.one_of(TestKind::ALL) }
    }

    fn mode(&mut self) -> Mode {
        if self.one_in(8) { Mode::Other("?".into()) } else { self.one_of(Mode::ALL) }
    }

    /// Any action that the grammar allows.
    fn action(&mut self) -> Action {
        let entry = &GRAMMAR[self.below(GRAMMAR.len())];
        let most = entry.things.most.min(3);
        let n = entry.things.least + self.below(most - entry.things.least + 1);
        let on = (0..n).map(|_| self.id()).collect();
        let mut action = Action::new(entry.verb.clone(), on);
        for slot in entry.slots {
            if slot.form == Form::First || self.one_in(2) {
                self.fill(slot.detail, &mut action);
            }
        }
        action
    }
}

#[test]
fn reading_what_was_printed_gives_the_actions() {
    let mut numbers = Numbers(0x0c0f_fee0_1234_5678);
    for _ in 0..20_000 {
        let actions: Vec<Action> = (0..numbers.below(3)).map(|_| numbers.action()).collect();
        let text = print(&actions);
        assert_eq!(parse(&text).as_ref(), Ok(&actions), "{text}");
        assert!(!text.contains('\n'), "one line: {text}");
    }
}

#[test]
fn guards_are_read_back_too() {
    let mut numbers = Numbers(77);
    for _ in 0..2_000 {
        let question = numbers.id();
        if question.as_str().is_empty() {
            continue;
        }
        let guard = vec![crate::model::Answer::new(question, &numbers.text())];
        let written = vec![super::Written { guard, action: numbers.action() }];
        let text = print_written(&written);
        assert_eq!(parse_written(&text).as_ref(), Ok(&written), "{text}");
    }
}

#[test]
fn the_grammar_is_whole() {
    assert_eq!(GRAMMAR.iter().map(|entry| entry.verb.clone()).collect::<Vec<_>>(), Verb::ALL);
    for entry in GRAMMAR {
        assert_eq!(GRAMMAR.iter().filter(|other| other.token == entry.token).count(), 1, "{}", entry.token);
        for slot in entry.slots {
            let same = |key: &&str| entry.slots.iter().filter(|other| other.is_called(key)).count();
            assert!(std::iter::once(&slot.key).chain(slot.also).all(|key| same(key) == 1), "{}", entry.token);
            let like = entry.slots.iter().filter(|other| other.detail == slot.detail).count();
            assert_eq!(like, 1, "{} writes one field twice", entry.token);
        }
    }
}

/// Lines as the cases of the semantics write them, each canonical.
const CANONICAL: &[&str] = &[
    "shutdown",
    "isolate spur pv",
    "lock spur",
    "restore spur live=yes",
    "restore va vb",
    "undo cover_screws",
    "undo fan_lower 1",
    "slacken fan_lower 1",
    "remove cover",
    "aside cover",
    "prove M at=plug",
    "prove body",
    "release body what=pressure by=vent vent=vent",
    "release body what=pressure by=vent through=head temp=40 to=tray",
    "release store what=pressure by=drain through=drain vent=tap to=gully",
    "release R what=pressure by=recover",
    "release leg what=pressure by=vent through=bleed to=\"the gully\"",
    "make head 3 seal=new torque=5 pattern=cross",
    "make head seal=new torque=5..6 pattern=cross",
    "make door_nuts seal=reused",
    "make gas_union to=slack",
    "make j by=braze",
    "tighten head torque=20..25[lbf_av].[ft_i]",
    "purge H through=vent",
    "charge R with=nitrogen",
    "test fill-pressure",
    "test tightness at=tp",
    "test tightness union at=house",
    "test combustion mode=max",
    "start max",
    "start min",
    "start",
    "start hot-water",
    "finish safe",
    "finish",
    "set throttle to=per-test",
    "set throttle to=\"as found\"",
    "record throttle",
    "inspect rope criterion=springs_back ask=sound",
    "inspect case_seal criterion=whole",
    "fit pump new",
    "fit pump same",
    "discard pump reason=\"worn out\"",
    "clean burner with=brush for=30",
    "wait 900 unattended",
    "wait 10",
    "wait 30s",
    "undo j by=cut",
    "place cap",
    "take bond",
    "read gauge_port reading=\"fill pressure|1.0..1.5 bar\"",
    "prove M at=plug reading=\"L to N|0..5 V\" reading=\"L to PE|0..5 V\"",
    "prove body reading=\"drain||no flow for 60 s\"",
    "photograph burner of=\"the wiring\"",
    "tell who=operator",
    "hold who=supervisor criterion=signed",
    "ask leak text=\"Is a joint wet?\"",
    "shutdown · isolate spur · lock spur",
];

#[test]
fn canonical_lines_are_printed_as_they_stand() {
    for text in CANONICAL {
        match parse(text) {
            Ok(actions) => assert_eq!(&print(&actions), text),
            Err(error) => panic!("{text}: {error}"),
        }
    }
}

#[test]
fn other_spellings_are_read_and_printed_in_one_way() {
    for (typed, printed) in [
        ("test tightness union on=house", "test tightness union at=house"),
        ("make head torque=5-6", "make head torque=5..6"),
        ("make head torque=5,5..6N.m", "make head torque=5.5..6"),
        ("make head torque=\"5..6 N·m\"", "make head torque=5..6"),
        ("make head seal=new 3 pattern=cross torque=5", "make head 3 seal=new torque=5 pattern=cross"),
        ("make head seal=same", "make head seal=reused"),
        ("  shutdown   ·  lock spur ", "shutdown · lock spur"),
        ("test \"fill pressure\"", "test fill-pressure"),
        ("start mode=max", "start max"),
        ("finish left-safe", "finish safe"),
        ("make head torque=5..", "make head torque=5.."),
        ("fit new pump", "fit pump new"),
        ("release body temp=\"40 °C\"", "release body temp=40"),
        ("restore spur live=no", "restore spur"),
        ("wait for=10", "wait 10"),
        ("", ""),
    ] {
        assert_eq!(parse(typed).map(|actions| print(&actions)).as_deref(), Ok(printed), "{typed}");
    }
}

#[test]
fn guards_stand_before_the_verb() {
    let written =
        parse_written("[leak=yes] undo head · [a=b] [\"c d\"=\"e\"] lock spur · shutdown").expect("read");
    let guards: Vec<usize> = written.iter().map(|w| w.guard.len()).collect();
    assert_eq!(guards, [1, 2, 0]);
    assert_eq!(written[0].guard[0].question, Id::new("leak"));
    assert_eq!(written[0].guard[0].answer, "yes");
    assert_eq!(print_written(&written), "[leak=yes] undo head · [a=b] [\"c d\"=e] lock spur · shutdown");
}

#[test]
fn what_cannot_be_read_says_where_and_why() {
    for (typed, problem, column) in [
        ("shut down", Problem::UnknownVerb, 1),
        ("\"undo\" head", Problem::UnknownVerb, 1),
        ("undo head ·", Problem::NoVerb, 12),
        ("· undo head", Problem::NoVerb, 1),
        ("undo head · · lock spur", Problem::NoVerb, 13),
        ("undo", Problem::TooFewThings, 5),
        ("undo · lock spur", Problem::TooFewThings, 6),
        ("undo head colour=red", Problem::UnknownKey, 11),
        ("undo head torque=5", Problem::UnknownKey, 11),
        ("lock spur 2", Problem::UnknownKey, 11),
        ("shutdown now=yes", Problem::UnknownKey, 10),
        ("shutdown spur", Problem::TooManyThings, 10),
        ("undo head 2 3", Problem::Twice, 13),
        ("make head seal=new seal=new", Problem::Twice, 20),
        ("fit pump new same", Problem::Twice, 14),
        ("make head torque=tight", Problem::Value, 11),
        ("make head torque=5-", Problem::Value, 11),
        ("make head torque=\"5 big steps\"", Problem::Value, 11),
        ("make head 99999999999", Problem::Value, 11),
        ("restore spur live=perhaps", Problem::Value, 14),
        ("wait 10 minutes", Problem::TooManyThings, 9),
        ("prove M reading=\"a|b\"", Problem::Value, 9),
        ("prove M reading=\"a|1 V|c|d|e\"", Problem::Value, 9),
        ("isolate va, vb", Problem::NotAnId, 9),
        ("isolate spur ; lock spur", Problem::NotAnId, 14),
        ("lock ?", Problem::Missing, 6),
        ("test ?", Problem::Missing, 6),
        ("test", Problem::NoFirstWord, 5),
        ("ask", Problem::NoFirstWord, 4),
        ("undo [leak=yes] head", Problem::Guard, 6),
        ("[leak] undo head", Problem::Guard, 1),
        ("[leak=yes]undo head", Problem::Guard, 1),
        ("release body to=\"the gully", Problem::OpenQuotation, 17),
        ("release body to=5\"pipe", Problem::StrayQuotation, 18),
        ("release body to=\"a\"b", Problem::StrayQuotation, 20),
        ("undo he\"ad\"", Problem::StrayQuotation, 8),
        ("release body to=\"a\\b\"", Problem::Escape, 19),
        ("öffne ü", Problem::UnknownVerb, 1),
    ] {
        match parse_written(typed) {
            Ok(read) => panic!("{typed} must not be read, but gives {read:?}"),
            Err(error) => {
                assert_eq!((error.problem, error.column), (problem, column), "{typed}: {error}");
            }
        }
    }
}

#[test]
fn a_guard_is_refused_where_only_actions_are_read() {
    let error = parse("undo head · [leak=yes] undo head").expect_err("a guard");
    assert_eq!((error.problem, error.column), (Problem::GuardNotHere, 13));
}

#[test]
fn an_error_is_a_sentence_with_a_way_out() {
    let error = parse("make head colour=red").expect_err("no detail");
    assert_eq!(
        error.to_string(),
        "column 11: make does not take \"colour=\"; take it away or use one of a figure, to=, seal=, torque=, \
         pattern=, by=, live="
    );
    let error = parse("isolate va, vb").expect_err("a comma");
    assert_eq!(
        error.to_string(),
        "column 9: \"va,\" is no id; put blanks between ids, \" · \" between actions, and other ids in \
         quotation marks"
    );
}

#[test]
fn what_the_grammar_does_not_allow_is_printed_all_the_same() {
    let mut action = Action::new(Verb::Lock, Vec::new());
    action.seal = Some(Renewal::New);
    assert_eq!(print(&[action.clone()]), "lock ? seal=new");
    action.verb = Verb::Other("weigh in".into());
    assert_eq!(print(&[action]), "weigh-in seal=new");
    assert_eq!(print(&[Action::new(Verb::Test, vec![Id::new("union")])]), "test ? union");
}

/// A map with slide bolts of a motor and the unions of a pump.
fn motor() -> ApplianceMap {
    let connection = |id: &str, name: &str, count| Connection {
        count,
        grouping: Grouping::Each,
        ..Connection::new(Id::new(id), name, Family::Fixing)
    };
    let bolts = Connection {
        size: Some(Known::Value(Size {
            across_flats: Some(Measured::new(Figure::parse("17").expect("a figure"), Unit::Millimetre)),
            ..Size::default()
        })),
        ..connection("bolts", "slide bolts", 4)
    };
    let unions = Connection {
        size: Some(Known::later("the engineer on site")),
        seals: vec![SealUse { seal: Id::new("washer"), quantity: 1, rest: Rest::default() }],
        tight: Some(Known::Value(Tight {
            method: "hand tight and a quarter turn".to_owned(),
            ..Tight::default()
        })),
        ..connection("unions", "pump unions", 2)
    };
    let washer = Seal {
        size: Some(Known::Value("G 1".to_owned())),
        number: Some(Known::later("the stores")),
        ..Seal::new(Id::new("washer"), "flat washer", SealPolicy::AlwaysRenew)
    };
    let check_valve = Component {
        number: Some(Known::later("the stores")),
        ..Component::new(Id::new("check_valve"), "check valve")
    };
    ApplianceMap {
        components: vec![check_valve],
        connections: vec![bolts, unions],
        seals: vec![washer],
        ..ApplianceMap::default()
    }
}

#[test]
fn actions_are_shown_with_names_and_what_the_map_adds() {
    for (written, seen) in [
        ("undo bolts 2", "undo 2 of 4 slide bolts · 17 mm"),
        ("slacken bolts", "slacken 4 slide bolts · 17 mm"),
        (
            "undo unions",
            "undo 2 pump unions · [later: size] · flat washer G 1 × 2 · [later: number of flat washer]",
        ),
        (
            "make unions seal=new",
            "make 2 pump unions with new seal · [later: size] · flat washer G 1 × 2 · [later: number of flat \
             washer] · hand tight and a quarter turn",
        ),
        (
            "undo bolts unions",
            "undo slide bolts, pump unions · slide bolts: 17 mm · pump unions: [later: size] · \
             pump unions: flat washer G 1 × 2 · pump unions: [later: number of flat washer]",
        ),
        ("wait 10 unattended", "wait 10 min unattended"),
        ("test leak-cold", "test leak cold"),
        (
            "release body what=pressure by=vent through=unions to=gully",
            "release pressure from body by vent through pump unions to gully",
        ),
        ("prove M at=bolts reading=\"L to N|0..5 V\"", "prove M at slide bolts (L to N 0 V to 5 V)"),
        ("fit pump new", "fit new pump"),
        ("fit check_valve new", "fit new check valve · [later: number]"),
        ("fit check_valve same", "fit same check valve"),
        ("remove check_valve", "remove check valve"),
        ("fit check_valve pump new", "fit new check valve, pump · check valve: [later: number]"),
        ("tighten bolts torque=5", "tighten 4 slide bolts 5 N·m · 17 mm"),
    ] {
        let actions = parse(written).expect(written);
        assert_eq!(line(&shown(&actions[0], &motor())), seen, "{written}");
    }
}
