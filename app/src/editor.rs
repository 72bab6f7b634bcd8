//! The second part of the page: the editor and the screens that are made of it.

use crate::appliance::page::ApplianceScreen;
use crate::components::lane_patterns::LanePatterns;
use crate::desk::{Begin, Desk, Later, OpenNow, Start};
use crate::finding_out::page::LaterScreen;
use crate::follow::job_store::JobStore;
use crate::follow::page::FollowScreen;
use crate::follow::standing::Standing;
use crate::frame::all_findings::AllFindings;
use crate::frame::changed_file::ChangedFileBar;
use crate::frame::not_kept::NotKept;
use crate::frame::versions_line::VersionsLine;
use crate::kit::page::KitScreen;
use crate::places;
use crate::print::page::PrintScreen;
use crate::route::{Screen, go};
use crate::state::opening::Beginning;
use crate::state::shelf::is_blank;
use crate::state::{EditorStore, files};
use crate::versions::page::VersionsScreen;
use crate::write::keys_sheet::KeysBeside;
use crate::write::page::WriteScreen;
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::model::Id;
use std::rc::Rc;

/// The editor with what is shown of it.
#[derive(Clone, Copy)]
struct Editor {
    store: EditorStore,
    jobs: JobStore,
    offline: ReadSignal<String>,
    open_now: Memo<OpenNow>,
}

/// Makes the editor of what there is to begin with. Its signals belong to `owner`, which outlives every screen.
pub async fn make(start: Start, offline: ReadSignal<String>, owner: Owner) -> Rc<dyn Desk> {
    let beginning = Beginning::find(start == Start::Demo).await;
    owner.with(|| Rc::new(Editor::of(beginning.into_store(), offline)) as Rc<dyn Desk>)
}

impl Editor {
    fn of(store: EditorStore, offline: ReadSignal<String>) -> Self {
        let standing = Memo::new(move |_| {
            store.told().with(|told| Standing {
                is_rejected: told.is_rejected,
                stamp: told.stamp.clone(),
                n_rules: told.n_rules,
            })
        });
        let jobs = JobStore::new(store.document(), standing);
        let open_now = Memo::new(move |_| {
            store.document().with(|document| {
                let (id, title) = (document.id.clone(), document.title.clone());
                OpenNow { id, title, is_blank: is_blank(document) }
            })
        });
        forget_places_of_others(open_now);
        flush_when_hidden(store);
        crate::everywhere::listen(store);
        Self { store, jobs, offline, open_now }
    }
}

impl Desk for Editor {
    fn screen(&self, screen: Screen) -> AnyView {
        let Self { store, jobs, offline, .. } = *self;
        let (as_on_paper, screen_shown) = (screen == Screen::Print, screen);
        let screen = match screen {
            Screen::Appliance => view! { <ApplianceScreen store /> }.into_any(),
            Screen::Kit => view! { <KitScreen store /> }.into_any(),
            Screen::Later => view! { <LaterScreen store /> }.into_any(),
            Screen::Versions => view! { <VersionsScreen store /> }.into_any(),
            Screen::Print => view! { <PrintScreen store /> }.into_any(),
            Screen::Follow => view! { <FollowScreen jobs offline /> }.into_any(),
            // The list of procedures is not of this part.
            Screen::Write | Screen::Procedures => view! { <WriteScreen store offline /> }.into_any(),
        };
        // Write has the sheet of keys at its foot, beside its key.
        let keys = (screen_shown != Screen::Write).then(|| view! { <KeysBeside /> });
        // Whoever follows a job knows no rule.
        let list = (screen_shown != Screen::Follow).then(|| view! { <AllFindings store /> });
        view! { <LanePatterns as_on_paper />{screen}{keys}{list} }.into_any()
    }

    fn bars(&self) -> AnyView {
        let store = self.store;
        view! { <NotKept store /><ChangedFileBar store /> }.into_any()
    }

    fn versions(&self) -> AnyView {
        view! { <VersionsLine /> }.into_any()
    }

    fn open_now(&self) -> Signal<OpenNow> {
        self.open_now.into()
    }

    fn notice(&self) -> RwSignal<Option<String>> {
        self.store.notice()
    }

    fn begin(&self, what: Begin) {
        let store = self.store;
        match what {
            Begin::New => {
                store.open_new();
                go(Screen::Appliance);
            }
            Begin::LikeOpen => {
                store.open_new_from_this();
                go(Screen::Write);
            }
            Begin::File(file) => {
                files::open_file(store, file, || go(Screen::Write));
            }
            Begin::FileInHand => store.open_in_hand(Callback::new(|()| go(Screen::Write))),
            Begin::Demo => spawn_local(async move { show(store, store.open_demo().await) }),
            Begin::Kept(id) => spawn_local(async move { show(store, store.open_kept(id).await) }),
            Begin::Sample(name) => spawn_local(async move { show(store, store.open_sample(name).await) }),
        }
    }

    fn remove_open(&self, then: Box<dyn Fn(Result<bool, String>) + Send + Sync>) {
        self.store.remove_open(then);
    }

    fn put_back(&self, id: Id) -> Later<Result<(), String>> {
        let store = self.store;
        Box::pin(async move { store.back_from_bin(id).await })
    }
}

/// Shows what was opened, or why it was not.
fn show(store: EditorStore, opened: Result<(), String>) {
    match opened {
        Ok(()) => go(Screen::Write),
        Err(reason) => store.notice().set(Some(reason)),
    }
}

/// Each procedure is shown from its top when it is opened.
fn forget_places_of_others(open_now: Memo<OpenNow>) {
    Effect::new(move |before: Option<Id>| {
        let now = open_now.with(|open| open.id.clone());
        if before.is_some_and(|before| before != now) {
            places::forget();
        }
        now
    });
}

/// Writes what is pending as soon as the page goes out of sight, which may be the last that it hears.
fn flush_when_hidden(store: EditorStore) {
    let keep = move || {
        store.drop_held();
        store.store_drafts();
        store.keeper().flush();
    };
    window_event_listener_untyped("pagehide", move |_| {
        keep();
        store.leave_tabs();
    });
    window_event_listener_untyped("visibilitychange", move |_| {
        if document().visibility_state() == web_sys::VisibilityState::Hidden {
            keep();
        }
    });
    window_event_listener_untyped("beforeunload", move |event| {
        if store.keeper().would_lose() {
            // The browser asks in its own words whether to leave.
            event.prevent_default();
        }
    });
}
