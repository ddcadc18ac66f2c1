//! A real browser, driven over its own protocol (W3C WebDriver) by ChromeDriver.

use std::io::{Read as _, Write as _};
use std::net::{TcpListener, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::{Value, json};

/// A browser with one page open. It is closed when this is dropped.
pub(crate) struct Browser {
    driver: Child,
    port: u16,
    session: String,
    /// Its profile, which goes with it.
    _profile: tempfile::TempDir,
}

const FLAGS: [&str; 12] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
    "--hide-scrollbars",
    "--force-device-scale-factor=1",
];

impl Browser {
    /// Starts one with a window of this size. There is no way around it: where Chromium or its
    /// driver is missing, the test fails and says so.
    pub(crate) fn open(width: u32, height: u32, script: bool) -> Self {
        let port = TcpListener::bind("127.0.0.1:0")
            .and_then(|listener| listener.local_addr())
            .unwrap()
            .port();
        let driver = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver is needed (Debian: chromium, chromium-driver)");
        let profile = tempfile::tempdir().unwrap();
        let mut browser = Self {
            driver,
            port,
            session: String::new(),
            _profile: profile,
        };
        let start = Instant::now();
        while TcpStream::connect(("127.0.0.1", port)).is_err() {
            assert!(start.elapsed() < Duration::from_secs(30), "no driver");
            std::thread::sleep(Duration::from_millis(50));
        }
        let mut flags: Vec<String> = FLAGS.map(str::to_owned).into();
        flags.push(format!("--window-size={width},{height}"));
        flags.push(format!(
            "--user-data-dir={}",
            browser._profile.path().display()
        ));
        let mut options = json!({ "args": flags });
        if !script {
            let off = json!({ "profile.managed_default_content_settings.javascript": 2 });
            options["prefs"] = off;
        }
        let asked = json!({ "capabilities": { "alwaysMatch": {
            "goog:chromeOptions": options,
            "goog:loggingPrefs": { "browser": "ALL" },
        }}});
        let made = browser.send("POST", "/session", &asked);
        browser.session = made["sessionId"].as_str().unwrap().to_owned();
        // A window has a least width; what it is made to think of itself has none.
        browser.devtools(
            "Emulation.setDeviceMetricsOverride",
            &json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 600 }),
        );
        browser
    }

    fn send(&self, method: &str, path: &str, body: &Value) -> Value {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        stream
            .set_read_timeout(Some(Duration::from_secs(120)))
            .unwrap();
        let body = if body.is_null() {
            String::new()
        } else {
            body.to_string()
        };
        write!(
            stream,
            "{method} {path} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nContent-Type: application/json\r\n\
             Content-Length: {}\r\nConnection: close\r\n\r\n{body}",
            self.port,
            body.len()
        )
        .unwrap();
        // The answer says how long it is; the driver may keep the connection open after it.
        let mut answer = Vec::new();
        let mut part = [0; 65536];
        loop {
            if let Some(whole) = complete(&answer) {
                let value: Value = serde_json::from_slice(whole).unwrap();
                let value = &value["value"];
                assert!(value["error"].is_null(), "{path}: {value}");
                return value.clone();
            }
            let read = stream.read(&mut part).unwrap();
            assert!(read > 0, "{path}: the answer breaks off");
            answer.extend(&part[..read]);
        }
    }

    fn session(&self, method: &str, path: &str, body: &Value) -> Value {
        self.send(method, &format!("/session/{}{path}", self.session), body)
    }

    pub(crate) fn devtools(&self, command: &str, params: &Value) -> Value {
        let body = json!({ "cmd": command, "params": params });
        self.session("POST", "/goog/cdp/execute", &body)
    }

    /// Opens a file and waits until it is loaded.
    pub(crate) fn show(&self, file: &Path) {
        let url = format!("file://{}", file.display());
        self.session("POST", "/url", &json!({ "url": url }));
    }

    /// What a piece of script gives back; it runs beside the page and its policy.
    pub(crate) fn ask(&self, script: &str) -> Value {
        self.session(
            "POST",
            "/execute/sync",
            &json!({ "script": script, "args": [] }),
        )
    }

    /// What the browser complained of since it was asked last.
    pub(crate) fn complaints(&self) -> Vec<String> {
        let logged = self.session("POST", "/se/log", &json!({ "type": "browser" }));
        let all = logged.as_array().unwrap().iter();
        // That taking a picture of what was drawn takes time is the tests' own doing.
        all.map(|entry| entry["message"].as_str().unwrap().to_owned())
            .filter(|message| !message.contains("GPU stall due to ReadPixels"))
            .collect()
    }

    /// A picture of the window, or of the whole page, as a file for people to look at.
    pub(crate) fn picture(&self, file: &Path, whole: bool) {
        let params = json!({ "format": "png", "captureBeyondViewport": whole });
        self.store(file, "Page.captureScreenshot", &params);
    }

    /// The page as it is printed.
    pub(crate) fn print(&self, file: &Path, inches: [f64; 2]) {
        let params = json!({
            "paperWidth": inches[0], "paperHeight": inches[1],
            "printBackground": false, "preferCSSPageSize": false,
        });
        self.store(file, "Page.printToPDF", &params);
    }

    fn store(&self, file: &Path, command: &str, params: &Value) {
        let made = self.devtools(command, params);
        let bytes = data_encoding::BASE64
            .decode(made["data"].as_str().unwrap().as_bytes())
            .unwrap();
        std::fs::write(file, bytes).unwrap();
    }
}

/// The body of an answer, once all of it is there.
fn complete(answer: &[u8]) -> Option<&[u8]> {
    let head = answer.windows(4).position(|four| four == b"\r\n\r\n")?;
    let text = String::from_utf8_lossy(&answer[..head]).to_lowercase();
    let length = text.split("content-length:").nth(1)?;
    let length: usize = length.lines().next()?.trim().parse().ok()?;
    answer.get(head + 4..head + 4 + length)
}

impl Drop for Browser {
    fn drop(&mut self) {
        if !self.session.is_empty() && !std::thread::panicking() {
            self.session("DELETE", "", &Value::Null);
        }
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}
