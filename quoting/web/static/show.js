"use strict";
// What comes back is shown in its place: the answer, what is said beside fields, how old it is.

const HALF = "This date is only half typed: give its day, month and year, or clear it.";
const byId = (id) => document.getElementById(id);
const table = () => byId("worktable");
const form = () => byId("order");

function say(words) {
  byId("status").textContent = words;
}

function busy(on) {
  for (const part of [byId("answer"), byId("figures")]) {
    on ? part.setAttribute("aria-busy", "true") : part.removeAttribute("aria-busy");
  }
  say(on ? "Being worked out…" : "");
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

function before(page) {
  const wrong = page.querySelector(".mistakes");
  return `This is the last answer${wrong ? ", from before the mistakes." : ": something is still to fill in."}`;
}

function sayBeside(id, words, wrong) {
  const beside = byId(`${id}.says`);
  if (beside) beside.textContent = words;
  beside?.classList.toggle("wrong", wrong);
  if (wrong) byId(id)?.setAttribute("aria-invalid", "true");
}

function showSaid(page) {
  for (const beside of form().querySelectorAll(".says")) beside.textContent = "";
  for (const field of form().querySelectorAll("[aria-invalid]")) field.removeAttribute("aria-invalid");
  for (const said of page.querySelectorAll("#said > p")) {
    sayBeside(said.dataset.field, said.textContent, "wrong" in said.dataset);
  }
  sayHalf();
}

// A browser gives a date that is only half typed as none at all.
const halfTyped = () => [...form().elements].find((field) => field.validity?.badInput);

function sayHalf() {
  const field = halfTyped();
  if (field) sayBeside(field.id, HALF, true);
  return field;
}

// Each part to open, by the section it is in, its words without figures, and which of those it is.
function foldings(root) {
  const found = {};
  for (const each of root.querySelectorAll("#answer details, #order details")) {
    const section = each.closest("section[aria-labelledby]")?.getAttribute("aria-labelledby");
    const words = each.querySelector("summary").textContent.replace(/[\d.,\s]+/g, " ");
    (found[`${section} ${words}`] ??= []).push(each);
  }
  return found;
}

function openAgain(before, after) {
  const opened = foldings(before);
  for (const [name, parts] of Object.entries(foldings(after))) {
    parts.forEach((part, at) => (part.open ||= Boolean(opened[name]?.[at]?.open)));
  }
}

// What is ticked within the answer while another is on its way stays as it is ticked now.
function tickAgain(fresh) {
  for (const tick of fresh.querySelectorAll("[name=choice]")) {
    const now = byId("answer").querySelector(`[name=choice][value="${CSS.escape(tick.value)}"]`);
    if (now) tick.checked = now.checked;
  }
}

function showAnswer(page) {
  const words = before(page);
  byId("mistakes").replaceChildren(...page.querySelector("#mistakes").childNodes);
  const answer = page.querySelector("#answer");
  if (!("fresh" in answer.dataset) && byId("answer").querySelector(".drawing")) {
    return age(words);
  }
  openAgain(document, page);
  tickAgain(answer);
  byId("answer").replaceChildren(...answer.childNodes);
  byId("figures").replaceChildren(...page.querySelector("#figures").childNodes);
  byId("figures").classList.remove("old");
  const figures = [...byId("figures").querySelectorAll("dl > div")];
  say(figures.slice(0, 2).map((each) => each.textContent.replace(/\s+/g, " ").trim()).join(", "));
}

// A line that is added is blank at first: the last answer stays until there is another.
function carryAnswer(page) {
  const answer = page.querySelector("#answer");
  if (!answer || "fresh" in answer.dataset || !byId("answer").querySelector(".drawing")) return;
  for (const id of ["answer", "figures"]) page.getElementById(id).replaceChildren(...byId(id).childNodes);
  return true;
}
