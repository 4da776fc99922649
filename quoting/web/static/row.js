"use strict";
// A phone that wakes may have slept while rows were ticked elsewhere: the page is asked for anew,
// unless something is being typed in it.

const AWAKE_MS = 60 * 1000; // a glance at another page is no sleep
let hidden = 0;

function isTyped() {
  return [...document.querySelectorAll("input:not([type=hidden])")].some((field) => field.value !== field.defaultValue);
}

document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "hidden") {
    hidden = Date.now();
  } else if (Date.now() - hidden > AWAKE_MS && !isTyped()) {
    location.replace(location.href);
  }
});

window.addEventListener("pageshow", (event) => {
  if (event.persisted && !isTyped()) location.replace(location.href);
});
