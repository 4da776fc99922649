"use strict";
// A kept order is saved by itself while one types, one save after another; the last goes out even
// as the page is left. Without this the Save button does it.

const SAVE_PAUSE_MS = 800;
let saveTimer = 0; // the pause after a key
let unsaved = false; // whether something was typed since the last save was sent
let saving = false; // whether an answer to one is awaited

const canSave = () => Boolean(table()?.dataset.save);

function showState(page) {
  const fresh = page.getElementById("kept-state");
  if (!fresh) return false;
  byId("kept-state").replaceChildren(...fresh.childNodes);
  form().elements.kept.value = fresh.dataset.mark;
  return true;
}

const NO_ANSWER = "Not saved just now: is the program still running? It will be tried again.";
const OUTSIDE = "Not saved: you are not signed in any more. Sign in on another tab, and it will be saved.";

function tellUnsaved(why) {
  const told = byId("kept-state").querySelector(".saved");
  if (told) told.textContent = why;
}

function sendSave(leaving) {
  const fields = typed();
  fields.delete("do");
  fields.set("turn", turn());
  fields.set("csrf_token", form().elements.csrf_token.value);
  return fetch(table().dataset.save, { method: "POST", body: fields, keepalive: leaving });
}

async function save() {
  if (saving || !unsaved || !canSave()) return;
  [saving, unsaved] = [true, false];
  let why = NO_ANSWER;
  try {
    const reply = await sendSave(false);
    const page = new DOMParser().parseFromString(await reply.text(), "text/html");
    if (page.getElementById("outside")) why = OUTSIDE;
    // After a restart of the program the answer brings a new token, with which it is tried again.
    const token = page.querySelector("#order [name=csrf_token]");
    if (token) form().elements.csrf_token.value = token.value;
    if (!reply.ok || !showState(page)) throw new Error(reply.statusText);
  } catch {
    unsaved = true;
    tellUnsaved(why);
  } finally {
    saving = false;
    if (unsaved) saveSoon();
  }
}

function saveSoon() {
  clearTimeout(saveTimer);
  saveTimer = setTimeout(save, SAVE_PAUSE_MS);
}

document.addEventListener("input", (event) => {
  if (event.target.form !== form() || !canSave()) return;
  unsaved = true;
  saveSoon();
});

// A button of the head goes elsewhere: what was typed goes first.
window.addEventListener("pagehide", () => {
  if (unsaved && canSave()) sendSave(true);
});
