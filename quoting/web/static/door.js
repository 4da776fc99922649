"use strict";
// Outside, nothing of what was typed inside is left in this tab; the passphrase is shown when asked.

try {
  if (document.querySelector("#passphrase")) sessionStorage.clear();
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
