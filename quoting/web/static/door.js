"use strict";
// Outside, and where a buyer was forgotten, nothing of what was typed before is left in this tab.
// The passphrase is shown when that is asked.

try {
  if (document.querySelector("[data-forgets]")) sessionStorage.clear();
} catch {
  // A browser that stores nothing has nothing to forget.
}

const shown = document.getElementById("shown");
if (shown) {
  document.getElementById("showing").hidden = false;
  shown.addEventListener("change", () => {
    document.getElementById("passphrase").type = shown.checked ? "text" : "password";
  });
}
