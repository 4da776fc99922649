"use strict";
// The page without this works by its buttons. With it, the answer follows as one types, and the
// buttons for lines act in place. Nothing that is typed is ever replaced by what it did not ask.

const PAUSE_MS = 250;
const SIDES = ["blanket.width", "blanket.height"];
const byId = (id) => document.getElementById(id);
const table = () => byId("worktable");
const form = () => byId("order");
const keptAs = () => table().dataset.kept ?? "order";
let waiting = 0; // the timer of the pause after a key
let running = null; // what can call off the request under way
let pressed = null; // the button whose request is under way

const sent = (button) => {
  const fields = new URLSearchParams(new FormData(form()));
  if (button?.name) fields.set(button.name, button.value);
  return fields;
};

async function ask(address, fields) {
  running?.abort();
  running = new AbortController();
  const signal = running.signal;
  const reply = await fetch(address, { method: "POST", body: fields, signal });
  const page = new DOMParser().parseFromString(await reply.text(), "text/html");
  if (signal.aborted) throw new DOMException("", "AbortError");
  // After a restart of the program the page comes with a new token: the form takes it over.
  const token = page.querySelector("#order [name=csrf_token]");
  if (token) form().elements.csrf_token.value = token.value;
  return page;
}

function say(words) {
  byId("status").textContent = words;
}

function failed(error) {
  if (error.name === "AbortError") return;
  pressed = null;
  age("No answer came: is the program still running? This is the last answer.");
}

function age(words) {
  const answer = byId("answer");
  if (!answer.querySelector(".old-words")) {
    for (const part of answer.children) part.classList.add("old");
    byId("figures").classList.add("old");
    const told = document.createElement("p");
    told.className = "old-words";
    answer.prepend(told);
  }
  answer.querySelector(".old-words").textContent = words;
  say(words);
}

function showSaid(page) {
  for (const place of form().querySelectorAll(".says")) place.textContent = "";
  for (const field of form().querySelectorAll("[aria-invalid]")) field.removeAttribute("aria-invalid");
  for (const said of page.querySelectorAll("#said > p")) {
    const id = said.dataset.field;
    const place = byId(`${id}.says`);
    if (place) place.textContent = said.textContent;
    place?.classList.toggle("wrong", "wrong" in said.dataset);
    if ("wrong" in said.dataset) byId(id)?.setAttribute("aria-invalid", "true");
  }
}

function showAnswer(page) {
  byId("mistakes").replaceChildren(...page.querySelector("#mistakes").childNodes);
  const answer = page.querySelector("#answer");
  if (!("fresh" in answer.dataset) && byId("answer").querySelector(".drawing")) {
    return age("This is the last answer, from before the mistakes.");
  }
  const opened = [...byId("answer").querySelectorAll("details")].map((each) => each.open);
  answer.querySelectorAll("details").forEach((each, at) => (each.open = Boolean(opened[at])));
  byId("answer").replaceChildren(...answer.childNodes);
  byId("figures").replaceChildren(...page.querySelector("#figures").childNodes);
  byId("figures").classList.remove("old");
  const figures = [...byId("figures").querySelectorAll("dl > div")];
  say(figures.slice(0, 2).map((each) => each.textContent.replace(/\s+/g, " ").trim()).join(", "));
}

function keep() {
  try {
    sessionStorage.setItem(keptAs(), sent().toString());
  } catch {
    // A browser that stores nothing only forgets the order when the page is left.
  }
}

function recall(name) {
  try {
    return sessionStorage.getItem(name);
  } catch {
    return null;
  }
}

function follow() {
  keep();
  ask(table().dataset.answer, sent())
    .then((page) => (page.querySelector("#answer") ? (showSaid(page), showAnswer(page)) : failed({})))
    .catch(failed);
}

function replaceTable(page, fallback) {
  if (!page.getElementById("worktable")) return failed({});
  const next = page.querySelector("#worktable [autofocus]");
  next?.removeAttribute("autofocus");
  table().replaceWith(document.adoptNode(page.getElementById("worktable")));
  (next ?? byId(fallback))?.focus();
  keep();
}

function act(button) {
  clearTimeout(waiting);
  pressed = button;
  ask(form().getAttribute("action"), sent(button))
    .then((page) => ((pressed = null), replaceTable(page, button.id)))
    .catch(failed);
}

function start() {
  document.documentElement.classList.add("follows");
  const kept = recall(keptAs());
  if (table().dataset.start !== "sample" || !kept || kept === sent().toString()) return keep();
  const fields = new URLSearchParams(kept);
  for (const own of form().querySelectorAll("[type=hidden]")) fields.set(own.name, own.value);
  fields.set("do", "resume");
  ask(form().getAttribute("action"), fields).then((page) => replaceTable(page)).catch(failed);
}

document.addEventListener("input", (event) => {
  if (event.target.form !== form() || event.target.dataset.picks) return;
  clearTimeout(waiting);
  if (SIDES.includes(event.target.id)) byId("size").value = "";
  // What a button brings back was asked before this key: it is asked again, with the key in it.
  if (pressed) running.abort();
  waiting = setTimeout(() => (pressed ? act(pressed) : follow()), PAUSE_MS);
});

document.addEventListener("change", (event) => {
  const field = event.target;
  if (field.form !== form()) return;
  if (field.dataset.picks) act({ name: "do", value: field.dataset.picks, id: field.id });
  const code = field.selectedOptions?.[0]?.dataset.code;
  if (code) field.parentElement.querySelector(".dot circle")?.setAttribute("fill", code);
  if (field.id === "blanket.yarn") act({ name: "do", value: "yarn", id: field.id });
});

document.addEventListener("submit", (event) => {
  if (event.target !== form() || event.submitter?.formAction.endsWith("/quote")) return;
  if (event.submitter?.matches("[data-save], [data-leave]")) return;
  event.preventDefault();
  if (!pressed) act(event.submitter ?? {});
});

document.addEventListener("click", (event) => {
  if (event.target.closest("[data-afresh]")) sessionStorage.removeItem(keptAs());
});

start();
