//! Rust sources as syntax, with what is only compiled for tests taken out.

use proc_macro2::{Ident, LineColumn, TokenStream, TokenTree};
use putback_tests::text_files;
use quote::ToTokens;
use syn::spanned::Spanned;
use syn::visit_mut::{self, VisitMut};

/// One Rust source file.
pub struct Source {
    /// Path from the top folder.
    pub path: String,
    /// The text as it is.
    pub text: String,
    /// Its syntax without tests.
    pub shipped: syn::File,
    /// How many of its lines are only for tests.
    pub n_test_lines: usize,
}

impl Source {
    /// Reads one file.
    pub fn new(path: String, text: String) -> Self {
        let mut shipped = syn::parse_file(&text).unwrap_or_else(|error| panic!("{path}: {error}"));
        let mut tests = WithoutTests { n_lines: 0 };
        if path.ends_with("/tests.rs") {
            // The module around it declares such a file under `#[cfg(test)]`.
            shipped.items.clear();
            tests.n_lines = text.lines().count();
        }
        tests.visit_file_mut(&mut shipped);
        Self { path, text, shipped, n_test_lines: tests.n_lines }
    }

    /// The tokens of the shipped part, one after the other, without their nesting.
    pub fn tokens(&self) -> Vec<Token> {
        let mut tokens = Vec::new();
        flatten(self.shipped.to_token_stream(), &mut tokens);
        tokens
    }
}

/// The Rust sources below a folder.
pub fn sources(folder: &str) -> Vec<Source> {
    text_files(folder)
        .unwrap()
        .into_iter()
        .filter(|file| file.is(".rs"))
        .map(|file| Source::new(file.path, file.text))
        .collect()
}

/// The sources of every crate of the workspace.
pub fn all_sources() -> Vec<Source> {
    let all: Vec<Source> = ["app", "procedures-schema", "tests"].iter().flat_map(|c| sources(c)).collect();
    assert!(all.len() > 20, "the sources are not where the house rules look for them");
    all
}

/// A token and the line on which it stands; a bracket is a token of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct Token {
    /// Its text.
    pub text: String,
    /// Line, from 1.
    pub line: usize,
}

fn flatten(stream: TokenStream, tokens: &mut Vec<Token>) {
    for tree in stream {
        let at = |place: LineColumn| place.line;
        match tree {
            TokenTree::Group(group) => {
                let (open, close) = match group.delimiter() {
                    proc_macro2::Delimiter::Parenthesis => ("(", ")"),
                    proc_macro2::Delimiter::Brace => ("{", "}"),
                    proc_macro2::Delimiter::Bracket => ("[", "]"),
                    proc_macro2::Delimiter::None => ("", ""),
                };
                tokens.push(Token { text: open.to_owned(), line: at(group.span_open().start()) });
                flatten(group.stream(), tokens);
                tokens.push(Token { text: close.to_owned(), line: at(group.span_close().start()) });
            }
            other => tokens.push(Token { text: other.to_string(), line: at(other.span().start()) }),
        }
    }
}

/// Takes out every item that is only there for tests.
struct WithoutTests {
    n_lines: usize,
}

impl WithoutTests {
    fn retain<T: Spanned>(&mut self, items: &mut Vec<T>, attributes: impl Fn(&T) -> &[syn::Attribute]) {
        items.retain(|item| {
            let for_tests = attributes(item).iter().any(is_for_tests);
            if for_tests {
                let span = item.span();
                self.n_lines += span.end().line + 1 - span.start().line;
            }
            !for_tests
        });
    }
}

impl VisitMut for WithoutTests {
    fn visit_file_mut(&mut self, file: &mut syn::File) {
        self.retain(&mut file.items, attributes_of);
        visit_mut::visit_file_mut(self, file);
    }

    fn visit_item_mod_mut(&mut self, module: &mut syn::ItemMod) {
        if let Some((_, items)) = &mut module.content {
            self.retain(items, attributes_of);
        }
        visit_mut::visit_item_mod_mut(self, module);
    }
}

fn attributes_of(item: &syn::Item) -> &[syn::Attribute] {
    match item {
        syn::Item::Const(item) => &item.attrs,
        syn::Item::Enum(item) => &item.attrs,
        syn::Item::Fn(item) => &item.attrs,
        syn::Item::Impl(item) => &item.attrs,
        syn::Item::Macro(item) => &item.attrs,
        syn::Item::Mod(item) => &item.attrs,
        syn::Item::Static(item) => &item.attrs,
        syn::Item::Struct(item) => &item.attrs,
        syn::Item::Trait(item) => &item.attrs,
        syn::Item::Type(item) => &item.attrs,
        syn::Item::Use(item) => &item.attrs,
        _ => &[],
    }
}

/// `#[test]`, `#[wasm_bindgen_test]`, and any `#[cfg(…)]` that names `test`.
fn is_for_tests(attribute: &syn::Attribute) -> bool {
    let path = attribute.path();
    if path.is_ident("test") || path.is_ident("wasm_bindgen_test") {
        return true;
    }
    let names_test = |list: &syn::MetaList| {
        let mut tokens = Vec::new();
        flatten(list.tokens.clone(), &mut tokens);
        let negated = tokens.iter().any(|token| token.text == "not");
        !negated && tokens.iter().any(|token| token.text == "test")
    };
    path.is_ident("cfg") && attribute.meta.require_list().is_ok_and(names_test)
}

/// A function with a body: its name and how many lines it takes.
pub fn functions(source: &Source) -> Vec<(Ident, usize)> {
    let mut found = Functions(Vec::new());
    syn::visit::visit_file(&mut found, &source.shipped);
    found.0
}

struct Functions(Vec<(Ident, usize)>);

impl Functions {
    fn add(&mut self, signature: &syn::Signature, body: &syn::Block) {
        let n_lines = body.span().end().line + 1 - signature.span().start().line;
        self.0.push((signature.ident.clone(), n_lines));
    }
}

impl<'ast> syn::visit::Visit<'ast> for Functions {
    fn visit_item_fn(&mut self, function: &'ast syn::ItemFn) {
        self.add(&function.sig, &function.block);
        syn::visit::visit_item_fn(self, function);
    }

    fn visit_impl_item_fn(&mut self, function: &'ast syn::ImplItemFn) {
        self.add(&function.sig, &function.block);
        syn::visit::visit_impl_item_fn(self, function);
    }

    fn visit_trait_item_fn(&mut self, function: &'ast syn::TraitItemFn) {
        if let Some(body) = &function.default {
            self.add(&function.sig, body);
        }
        syn::visit::visit_trait_item_fn(self, function);
    }
}

#[test]
fn what_is_for_tests_is_taken_out() {
    let text =
        "fn kept() {\n}\n#[cfg(test)]\nmod tests {\n    fn gone() {}\n}\n#[cfg(not(test))]\nfn also() {}\n";
    let source = Source::new("sample.rs".to_owned(), text.to_owned());
    let names: Vec<String> = functions(&source).iter().map(|(name, _)| name.to_string()).collect();
    assert_eq!(names, ["kept", "also"]);
    assert_eq!(source.n_test_lines, 4);
    assert_eq!(functions(&source).first().map(|(_, n_lines)| *n_lines), Some(2));
}
