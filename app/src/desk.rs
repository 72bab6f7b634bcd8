//! The part of the page that writes and follows, as the part that comes first knows it.
//!
//! The list of procedures stands as soon as the first part is there, a seventh of the page's weight. The rest is
//! fetched while somebody looks at the list, or waits for it when they were quicker.

use crate::route::Screen;
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::model::Id;
use std::future::Future;
use std::pin::Pin;
use std::rc::Rc;

/// What comes later.
pub type Later<T> = Pin<Box<dyn Future<Output = T>>>;

/// An editor, or in words why there is none.
pub type Made = Result<Rc<dyn Desk>, String>;

/// What can be opened.
pub enum Begin {
    /// An empty procedure.
    New,
    /// One with everything of the open one.
    LikeOpen,
    /// The demonstration, one step of which is missing.
    Demo,
    /// One of this device.
    Kept(Id),
    /// A copy of one that comes with the page, by its file.
    Sample(&'static str),
    /// A file that was picked.
    File(web_sys::File),
    /// A file that is picked now, and stays in hand.
    FileInHand,
}

/// Which procedure is open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenNow {
    /// Its identity.
    pub id: Id,
    /// Its title.
    pub title: String,
    /// Whether nothing stands in it.
    pub is_blank: bool,
}

/// What the list of procedures wants of the editor.
pub trait Desk {
    /// A screen other than the list.
    fn screen(&self, screen: Screen) -> AnyView;
    /// What has to be told on every screen: that nothing is kept, that a file was changed.
    fn bars(&self) -> AnyView;
    /// Program, format and rules in one line.
    fn versions(&self) -> AnyView;
    /// The open procedure.
    fn open_now(&self) -> Signal<OpenNow>;
    /// Why something was not done.
    fn notice(&self) -> RwSignal<Option<String>>;
    /// Opens something and goes to its screen; a refusal is a notice.
    fn begin(&self, what: Begin);
    /// Puts the open procedure into the bin and opens another; then says whether that was done.
    fn remove_open(&self, then: Box<dyn Fn(Result<bool, String>) + Send + Sync>);
    /// Brings one back from the bin; then says what came of it.
    fn put_back(&self, id: Id) -> Later<Result<(), String>>;
}

/// With what the editor begins where nothing is kept yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// With the demonstration.
    Demo,
    /// With nothing, because something is about to be opened.
    Empty,
}

/// How the second part of the page is had.
#[derive(Clone, Copy)]
pub struct Source {
    /// Fetches it.
    pub fetch: fn() -> Later<Result<(), String>>,
    /// Fetches it and makes the editor, with the words about working offline, and the owner of its signals.
    pub make: fn(Start, ReadSignal<String>, Owner) -> Later<Made>,
}

type Waiting = Box<dyn FnOnce(Rc<dyn Desk>)>;

/// How it stands with an editor that is not there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coming {
    /// Nobody waits for it.
    Unasked,
    /// Somebody waits for it.
    Awaited,
    /// It could not be fetched.
    Failed,
}

/// The editor, once it is there. A handle that can be copied.
#[derive(Clone, Copy)]
pub struct DeskPart {
    source: Source,
    offline: ReadSignal<String>,
    owner: StoredValue<Owner>,
    desk: RwSignal<Option<Rc<dyn Desk>>, LocalStorage>,
    trouble: RwSignal<Option<String>>,
    coming: RwSignal<Coming>,
    is_coming: StoredValue<bool>,
    /// What is opened when it comes: what somebody asked for last.
    wish: StoredValue<Option<Begin>, LocalStorage>,
    waiting: StoredValue<Vec<Waiting>, LocalStorage>,
}

impl DeskPart {
    /// The editor, still to be fetched. Its signals will live as long as what calls this.
    pub fn new(source: Source, offline: ReadSignal<String>) -> Self {
        Self {
            source,
            offline,
            owner: StoredValue::new(Owner::current().unwrap_or_default()),
            desk: RwSignal::new_local(None),
            trouble: RwSignal::new(None),
            coming: RwSignal::new(Coming::Unasked),
            is_coming: StoredValue::new(false),
            wish: StoredValue::new_local(None),
            waiting: StoredValue::new_local(Vec::new()),
        }
    }

    /// The editor, if it is there.
    pub fn get(self) -> Option<Rc<dyn Desk>> {
        self.desk.get()
    }

    /// Why it could not be fetched, or why something was not done.
    pub fn trouble(self) -> RwSignal<Option<String>> {
        self.trouble
    }

    /// How it stands with it, while it is not there.
    pub fn coming(self) -> ReadSignal<Coming> {
        self.coming.read_only()
    }

    /// Tells no trouble any more: it was read, or something else has been done.
    pub fn forget_trouble(self) {
        self.trouble.set(None);
        if self.coming.get_untracked() == Coming::Failed {
            self.coming.set(Coming::Unasked);
        }
    }

    /// Fetches the second part, so that it is there when it is wanted.
    pub fn fetch_soon(self) {
        let fetch = self.source.fetch;
        spawn_local(async move {
            // Whoever wants it tries again, and hears of it then.
            let _ = fetch().await;
        });
    }

    /// Has something done by the editor, at once if it is there, else when it is. If it cannot be fetched the
    /// trouble says so, and nothing is done.
    pub fn ask(self, start: Start, then: impl FnOnce(Rc<dyn Desk>) + 'static) {
        if let Some(desk) = self.desk.get_untracked() {
            then(desk);
            return;
        }
        self.waiting.update_value(|waiting| waiting.push(Box::new(then)));
        if self.is_coming.get_value() {
            return;
        }
        self.is_coming.set_value(true);
        self.trouble.set(None);
        let made = (self.source.make)(start, self.offline, self.owner.get_value());
        spawn_local(async move {
            let made = made.await;
            self.is_coming.set_value(false);
            let waiting = self.waiting.try_update_value(std::mem::take).unwrap_or_default();
            match made {
                Ok(desk) => {
                    self.coming.set(Coming::Unasked);
                    self.desk.set(Some(desk.clone()));
                    for then in waiting {
                        then(desk.clone());
                    }
                }
                Err(reason) => {
                    self.coming.set(Coming::Failed);
                    self.trouble.set(Some(reason));
                }
            }
        });
    }

    /// As [`DeskPart::ask`], for somebody who waits for it and is told so.
    pub fn want(self, start: Start, then: impl FnOnce(Rc<dyn Desk>) + 'static) {
        if self.desk.with_untracked(Option::is_none) {
            self.coming.set(Coming::Awaited);
        }
        self.ask(start, then);
    }

    /// Asks for the editor because a screen of it is shown. What was wanted and could not be had is then given up.
    pub fn want_screen(self) {
        if self.coming.get_untracked() == Coming::Failed {
            self.wish.set_value(None);
        }
        self.want(Start::Demo, |_| ());
    }

    /// Opens something. Of several that are asked for before the editor is there, the last is opened.
    pub fn begin(self, what: Begin) {
        self.wish.set_value(Some(what));
        self.try_again(Start::Empty);
    }

    /// Asks for the editor again, and for what somebody wanted of it.
    pub fn try_again(self, start: Start) {
        self.want(start, move |desk| {
            if let Some(what) = self.wish.try_update_value(Option::take).flatten() {
                desk.begin(what);
            }
        });
    }

    /// The open procedure, if the editor is there.
    pub fn open_now(self) -> Option<OpenNow> {
        self.get().map(|desk| desk.open_now().get())
    }
}
