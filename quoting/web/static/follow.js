"use strict";
// The page without this works by its buttons. With it, the answer follows as one types, and the
// buttons for lines act in place. Nothing that is typed is ever replaced by what it did not ask.

const PAUSE_MS = 250;
const SLOW_MS = 300;
const SIDES = ["blanket.width", "blanket.height"];
const CARRIED = ["order_file", "stood_in"]; // what comes along of the order, typed elsewhere
const WAYS = ["price_by", "price.given", "price.margin", "price.markup"];
const STALE = "The order on the worktable has something to put right first, so it is not compared here.";
let waiting = 0; // the timer of the pause after a key
let running = null; // what can call off the request under way
let pressed = null; // the button whose request is under way
let takeover = null; // what is still to come into the form; until it has, the form is not kept

const typed = () => {
  const fields = new URLSearchParams(new FormData(form()));
  fields.delete("csrf_token");
  return fields;
};

async function ask(address, fields) {
  running?.abort();
  const mine = (running = new AbortController());
  const slow = setTimeout(busy, SLOW_MS, true);
  fields.set("csrf_token", form().elements.csrf_token.value);
  try {
    const reply = await fetch(address, { method: "POST", body: fields, signal: mine.signal });
    const page = new DOMParser().parseFromString(await reply.text(), "text/html");
    if (mine.signal.aborted) throw new DOMException("", "AbortError");
    page.refused = reply.status >= 400 && reply.status < 500;
    // After a restart of the program the page comes with a new token: the form takes it over.
    const token = page.querySelector("#order [name=csrf_token]");
    if (token) form().elements.csrf_token.value = token.value;
    return page;
  } finally {
    clearTimeout(slow);
    if (running === mine) {
      running = null;
      busy(false);
    }
  }
}

function failed(error) {
  if (error.name === "AbortError") return;
  [pressed, queue] = [null, []];
  age("No answer came: is the program still running? This is the last answer.");
}

function refused(page) {
  if (!page.refused) return failed(page);
  [pressed, queue] = [null, []];
  age(`${page.querySelector("h1")?.textContent ?? "This was refused."} This is the last answer.`);
}

function keep() {
  const fields = takeover ? takeover.typed : typed();
  if (!fields) return;
  store(table().dataset.kept, fields);
  if (!takeover?.order) store(place, fields);
}

function follow() {
  ask(table().dataset.answer, typed())
    .then((page) => (page.querySelector("#answer") ? (showSaid(page), showAnswer(page)) : refused(page)))
    .catch(failed);
}

function replaceTable(page, fallback) {
  const fresh = page.getElementById("worktable");
  if (!fresh) return refused(page);
  const held = document.activeElement?.closest("#order :is(input, select, textarea)");
  const caret = held && [held.selectionStart, held.selectionEnd];
  const next = fresh.querySelector("[autofocus]");
  next?.removeAttribute("autofocus");
  openAgain(table(), fresh);
  table().replaceWith(document.adoptNode(fresh));
  const now = (held && byId(held.id)) || next || byId(fallback);
  now?.focus();
  if (held && now?.selectionStart != null) now.setSelectionRange(...caret);
  keep();
  while (queue.length && !pressed) press(queue.shift());
}

function act(button) {
  clearTimeout(waiting);
  pressed = button;
  const fields = typed();
  if (button.name) fields.set(button.name, button.value);
  fields.set("turn", turn());
  ask(form().getAttribute("action"), fields)
    .then((page) => {
      renumberQueue(button);
      pressed = null;
      const carried = carryAnswer(page) && before(page);
      replaceTable(page, button.id);
      if (carried) age(carried);
    })
    .catch(failed);
}

function takeUp() {
  const fields = new URLSearchParams([...new URLSearchParams(takeover.order), ...(takeover.typed ?? [])]);
  if (!takeover.order) fields.set("do", "resume");
  ask(takeover.address, fields)
    .then((page) => {
      const fresh = page.getElementById("worktable");
      if (!fresh) return refused(page);
      if (fresh.className !== table().className) return (queue = []), age(STALE);
      takeover = null;
      replaceTable(page);
    })
    .catch(failed);
}

// What is typed before all has come goes into what is to come.
function typeOver(names) {
  takeover.typed ??= typed();
  if (takeover.order) CARRIED.forEach((name) => takeover.typed.delete(name));
  for (const name of names) {
    takeover.typed.delete(name);
    for (const value of typed().getAll(name)) takeover.typed.append(name, value);
  }
}

function start() {
  document.documentElement.classList.add("follows");
  const { kept, home, ofOrder, start: begins } = table().dataset;
  const here = holdPlace(home);
  if (table().dataset.save) return keep(); // the book has what was typed
  const latest = recall(kept);
  const order = (here || begins === "sample") && ofOrder && recall("order");
  const text = here || (["sample", "order"].includes(begins) && latest);
  const fields = text ? new URLSearchParams(text) : null;
  if (order) CARRIED.forEach((name) => fields?.delete(name));
  else if (!here && fields?.has("order_file")) CARRIED.forEach((name) => fields.set(name, typed().get(name)));
  if (!order && (!fields || `${fields}` === `${typed()}`)) return keep();
  takeover = { typed: fields, order, address: order ? ofOrder : form().getAttribute("action") };
  takeUp();
}

// Typing into one way to make a price chooses it; the workshop's own has nothing beside it.
function chooseWay({ name, value }) {
  if (WAYS.includes(name) && name !== "price_by") byId(`price_by.${value ? name.slice(6) : ""}`).checked = true;
  if (name !== "price_by") return;
  for (const way of WAYS.slice(1)) {
    const field = byId(way);
    if (value) field.value ||= field.dataset.held ?? "";
    else [field.dataset.held, field.value] = [field.value, ""];
  }
  byId(`price.${value}`)?.focus();
}

document.addEventListener("input", (event) => {
  const field = event.target;
  if (field.form !== form()) return;
  const isTick = field.name === "choice"; // it changes nothing in the answer
  if (isTick && !(running || takeover || pressed)) return keep();
  clearTimeout(waiting);
  chooseWay(field);
  if (SIDES.includes(field.id)) byId("size").value = "";
  const size = field.id === "size" && field.selectedOptions[0].dataset;
  if (size?.width) SIDES.forEach((id, at) => (byId(id).value = [size.width, size.height][at]));
  if (takeover) typeOver(size ? SIDES : WAYS.includes(field.name) ? WAYS : [field.name]);
  keep();
  // What a button or a takeover brings was asked before this key: it is asked again, with the key.
  if (takeover || pressed || isTick) running?.abort();
  waiting = setTimeout(() => (takeover ? takeUp() : pressed ? act(pressed) : follow()), PAUSE_MS);
});

document.addEventListener("change", (event) => {
  const field = event.target;
  if (field.form !== form()) return;
  const code = field.selectedOptions?.[0]?.dataset.code;
  if (code) field.parentElement.querySelector(".dot circle")?.setAttribute("fill", code);
  const deed = field.dataset.do;
  if (deed && !takeover && !pressed) act({ name: "do", value: deed, id: field.id });
});

document.addEventListener("focusout", ({ target }) => {
  if (target.type !== "date" || target.form !== form() || sayHalf()) return;
  if (byId(`${target.id}.says`).textContent === HALF) follow();
});

document.addEventListener("submit", (event) => {
  if (event.target !== form()) return;
  const button = event.submitter;
  const home = button?.dataset.home;
  const leaves = button?.formAction.endsWith("/quote") || button?.matches("[data-save], [data-leave]");
  const half = sayHalf();
  if (!leaves || takeover || pressed || half || (home && recall("order"))) event.preventDefault();
  if (home && recall("order")) return location.assign(home);
  if (half) return half.focus();
  if (takeover || pressed) return button && wait(button, leaves);
  if (!leaves) act(button ?? {});
});

window.addEventListener("pagehide", keep);
window.addEventListener("pageshow", (event) => event.persisted && start());

start();
