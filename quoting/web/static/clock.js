"use strict";
// A clock for timings. It is kept by the browser for all tabs, as moments of universal time, so
// that it goes on while the page is closed, over midnight, and over a change to winter time.

const KEPT = "clock";
const LONG_MS = 4 * 60 * 60 * 1000; // longer than one sits at the hook without looking up

function readClock() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "null");
    if (Number.isFinite(kept?.held) && (kept.since === null || Number.isFinite(kept.since))) return kept;
  } catch {
    // What cannot be read is no clock.
  }
  return { held: 0, since: null };
}

function keepClock(clock) {
  try {
    localStorage.setItem(KEPT, JSON.stringify(clock));
  } catch {
    // Without a store the clock still goes, as long as the page is open.
  }
}

function ran(clock) {
  const now = clock.since === null ? 0 : Math.max(0, Date.now() - clock.since);
  return clock.held + now;
}

function setUp(place) {
  let clock = readClock();
  const [start, stop, clear] = ["start", "stop", "clear"].map((name) => place.querySelector(`[data-clock="${name}"]`));
  const shown = place.querySelector("output");
  const long = place.querySelector("[data-clock='long']");
  const minutes = document.getElementById(place.dataset.minutes);

  function show() {
    const ms = ran(clock);
    const seconds = Math.floor(ms / 1000);
    shown.textContent = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
    const runs = clock.since !== null;
    start.disabled = runs;
    start.textContent = clock.held && !runs ? "Go on" : "Start";
    stop.disabled = !runs;
    clear.disabled = runs || ms === 0;
    long.hidden = !(runs && ms > LONG_MS);
  }

  function change(next) {
    clock = next;
    keepClock(clock);
    show();
  }

  // Each looks first at what is kept: the clock may have been started or stopped in another tab.
  start.addEventListener("click", () => {
    const kept = readClock();
    change(kept.since === null ? { held: kept.held, since: Date.now() } : kept);
    stop.focus();
  });
  stop.addEventListener("click", () => {
    const kept = readClock();
    const held = ran(kept.since === null ? clock : kept);
    change({ held, since: null });
    minutes.value = (held / 60000).toFixed(2).replace(".", place.dataset.mark);
    minutes.dispatchEvent(new Event("input", { bubbles: true }));
    minutes.focus();
  });
  clear.addEventListener("click", () => {
    change({ held: 0, since: null });
    minutes.value = "";
    start.focus();
  });
  window.addEventListener("storage", (event) => {
    if (event.key !== KEPT) return;
    clock = readClock();
    show();
  });
  setInterval(show, 500);
  show();
  place.hidden = false;
}

for (const place of document.querySelectorAll(".clock")) setUp(place);
