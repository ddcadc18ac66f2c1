//! The `bayrise` program. Everything it does lives in [`bayrise::cli`].

fn main() -> std::process::ExitCode {
    bayrise::cli::run(std::env::args_os()).into()
}
