//! How does the engine's giving up become a message?
//!
//! The engine ends with a panic where a driver fails it. Here that becomes a [`Fault`], and
//! nothing of it reaches the terminal.

use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind, set_hook, take_hook};

use crate::viewer::Fault;

/// Does the work; the engine's giving up becomes a fault.
pub(super) fn fenced<T>(work: impl FnOnce() -> Result<T, Fault>) -> Result<T, Fault> {
    let hook = take_hook();
    set_hook(Box::new(|_| {}));
    // What the work leaves behind half done is not looked at again.
    let outcome = catch_unwind(AssertUnwindSafe(work));
    set_hook(hook);
    outcome.unwrap_or_else(|reason| Err(gave_up(&*reason)))
}

fn gave_up(reason: &(dyn Any + Send)) -> Fault {
    let said = reason
        .downcast_ref::<String>()
        .map(String::as_str)
        .or_else(|| reason.downcast_ref::<&str>().copied());
    let why = said
        .and_then(|text| text.lines().next())
        .map_or(String::new(), |line| format!(": {line}"));
    Fault {
        what: format!("the graphics driver failed{why}"),
        help: DRIVER_HELP.into(),
    }
}

/// What to do where a driver fails.
pub(super) const DRIVER_HELP: &str = "update the graphics driver, or draw on the processor: \
     `apt install mesa-vulkan-drivers` (Debian and Ubuntu), then run again with \
     WGPU_ADAPTER_NAME=llvmpipe in the environment";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn giving_up_is_a_fault_with_its_reason() {
        let fault = fenced::<()>(|| panic!("no memory\nand more")).unwrap_err();
        assert_eq!(fault.what, "the graphics driver failed: no memory");
        assert!(fenced(|| Ok(3)).is_ok_and(|x| x == 3));
    }
}
