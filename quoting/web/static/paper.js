"use strict";
// What is done with a paper by a script: it is printed, and its text is copied. Without one, print
// is not offered, and the text stands on a page of its own.

const tell = (words) => { document.getElementById("copied").textContent = words; };

function printPage(address) {
  if (!address) return window.print();
  const page = window.open(address);
  page?.addEventListener("load", () => page.print());
}

// Browsers lend their clipboard only to a page of this computer, or one sent by TLS.
async function copied(field) {
  try {
    await navigator.clipboard.writeText(field.value);
    return true;
  } catch {
    field.hidden = false;
    field.focus();
    field.select();
    return document.execCommand("copy");
  }
}

async function copyText(button) {
  const done = await copied(document.getElementById(button.dataset.copies));
  tell(done ? "Copied." : "It could not be copied here: the text is marked, copy it by hand.");
}

for (const button of document.querySelectorAll("[data-print]")) {
  button.hidden = false;
  button.addEventListener("click", () => printPage(button.dataset.print));
}
for (const button of document.querySelectorAll("[data-copies]")) {
  button.hidden = false;
  button.addEventListener("click", (event) => {
    event.preventDefault();
    copyText(button);
  });
}
