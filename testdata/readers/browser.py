"""Opens pages and pictures in headless Chromium: browser.py FILE[:PAGES]...

Each is opened from its file, in light and in dark, on a phone and on a desk. It
fails when the page asks for anything but itself, says something on the console,
shows nothing, is broader than a phone, or prints on more pages of A4 than are
named. With LOOK=FOLDER the pictures of what was seen are kept there, and what
would be printed.
"""
import base64
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

FLAGS = (
    "--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking "
    "--disable-component-update --disable-sync --disable-default-apps --hide-scrollbars --remote-debugging-pipe"
).split()


class Browser:
    """Speaks the DevTools protocol over a pair of pipes, which Chromium has as 3 and 4."""

    def __init__(self, profile):
        to_read, self.write_end = os.pipe()
        self.read_end, to_write = os.pipe()

        def numbered():
            spare_in, spare_out = os.dup(to_read), os.dup(to_write)
            os.dup2(spare_in, 3)
            os.dup2(spare_out, 4)

        self.process = subprocess.Popen(
            ["chromium", *FLAGS, "--user-data-dir=" + profile, "about:blank"],
            pass_fds=(3, 4), preexec_fn=numbered, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )
        os.close(to_read)
        os.close(to_write)
        self.rest, self.number, self.events = b"", 0, []

    def receive(self):
        while b"\0" not in self.rest:
            more = os.read(self.read_end, 1 << 20)
            if not more:
                sys.exit("Chromium has ended")
            self.rest += more
        message, self.rest = self.rest.split(b"\0", 1)
        return json.loads(message)

    def call(self, method, session=None, **params):
        self.number += 1
        message = {"id": self.number, "method": method, "params": params}
        if session:
            message["sessionId"] = session
        os.write(self.write_end, json.dumps(message).encode() + b"\0")
        while True:
            answer = self.receive()
            if answer.get("id") == self.number:
                if "error" in answer:
                    sys.exit(f"{method}: {answer['error']}")
                return answer["result"]
            self.events.append(answer)

    def wait(self, method):
        while not any(e.get("method") == method for e in self.events):
            self.events.append(self.receive())


def look(browser, path, most_pages, look_in):
    """Opens one file and gives what is wrong with it, and what it is."""
    target = browser.call("Target.createTarget", url="about:blank")["targetId"]
    session = browser.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
    for domain in ("Page", "Runtime", "Network", "Log"):
        browser.call(domain + ".enable", session)
    wrong, own = [], path.resolve().as_uri()
    for name, width, scheme in (("desk", 1200, "light"), ("phone", 400, "light"), ("dark", 1200, "dark")):
        browser.events.clear()
        browser.call("Emulation.setDeviceMetricsOverride", session, width=width, height=900, deviceScaleFactor=2 if width < 800 else 1, mobile=width < 800)
        browser.call("Emulation.setEmulatedMedia", session, features=[{"name": "prefers-color-scheme", "value": scheme}])
        browser.call("Page.navigate", session, url=own)
        browser.wait("Page.loadEventFired")
        shot = browser.call("Page.captureScreenshot", session, format="png", captureBeyondViewport=True)["data"]
        seen = browser.call("Runtime.evaluate", session, returnByValue=True, expression="""({
            text: (document.body || document.documentElement).textContent.trim().length,
            shapes: document.querySelectorAll('rect, path, polygon, line').length,
            scripts: document.querySelectorAll('script').length,
            broader: document.documentElement.scrollWidth - innerWidth,
        })""")["result"]["value"]
        for event in browser.events:
            params = event.get("params", {})
            if event["method"] == "Network.requestWillBeSent" and params["request"]["url"] != own:
                wrong.append(f"{name}: asks for {params['request']['url']}")
            if event["method"] in ("Runtime.consoleAPICalled", "Runtime.exceptionThrown", "Log.entryAdded"):
                wrong.append(f"{name}: says {json.dumps(params)[:500]}")
        if seen["text"] < 100 or seen["shapes"] < 10 or seen["scripts"] > 0:
            wrong.append(f"{name}: shows {seen}")
        if path.suffix == ".html" and seen["broader"] > 0:
            wrong.append(f"{name}: {seen['broader']} pixels too broad")
        if look_in:
            (look_in / f"{path.name}-{name}.png").write_bytes(base64.b64decode(shot))
    printed = base64.b64decode(browser.call("Page.printToPDF", session, preferCSSPageSize=True)["data"])
    pages = len(re.findall(rb"/Type */Page\b", printed))
    if not 1 <= pages <= most_pages:
        wrong.append(f"prints on {pages} pages")
    if look_in:
        (look_in / f"{path.name}.pdf").write_bytes(printed)
    browser.call("Target.closeTarget", targetId=target)
    return wrong, f"{pages} pages" if pages > 1 else "1 page"


def main():
    look_in = pathlib.Path(os.environ["LOOK"]) if os.environ.get("LOOK") else None
    failed = False
    with tempfile.TemporaryDirectory() as profile:
        browser = Browser(profile)
        try:
            for name in sys.argv[1:]:
                name, _, most = name.partition(":")
                wrong, pages = look(browser, pathlib.Path(name), int(most or 1000), look_in)
                print(f"{pathlib.Path(name).name}: {'; '.join(wrong) if wrong else 'opened in Chromium, quiet and alone, ' + pages}")
                failed = failed or bool(wrong)
        finally:
            os.write(browser.write_end, json.dumps({"id": 0, "method": "Browser.close"}).encode() + b"\0")
            browser.process.wait(timeout=30)
    sys.exit(failed)


main()
