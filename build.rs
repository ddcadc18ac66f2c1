//! Links the program at a fixed address where the engine is in it.
//!
//! With the engine the program holds over 300,000 addresses which the loader must write anew before
//! the first line runs, where it is linked to run at any address: 6 ms of each `check` on the
//! machine that this was measured on, for an answer that takes 10. The price is that the program's
//! own place in memory can be guessed; libraries, heap and stack stay where the system puts them.
//! Linux alone is treated so: it is measured there.

fn main() {
    println!("cargo:rerun-if-changed=build.rs");
    let is = |name: &str, wanted: &str| std::env::var(name).is_ok_and(|value| value == wanted);
    if std::env::var_os("CARGO_FEATURE_VIEWER").is_some()
        && is("CARGO_CFG_TARGET_OS", "linux")
        && is("CARGO_CFG_TARGET_ENV", "gnu")
    {
        println!("cargo:rustc-link-arg-bins=-no-pie");
    }
}
