//! Has the linker leave in what splitting the page into parts needs.

fn main() {
    println!("cargo:rustc-link-arg-bins=--emit-relocs");
}
