//! The `bayrise` program. Everything it does lives in [`bayrise::cli`].

/// Studies make many small lists on every core; the system's own allocator costs them a sixth of
/// their time.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> std::process::ExitCode {
    bayrise::cli::run(std::env::args_os()).into()
}
