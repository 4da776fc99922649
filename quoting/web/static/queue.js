"use strict";
// Buttons pressed while another is at work wait for their turn, each with the line it was beside.

let queue = [];

// Where a line stands once a button has done its work; nowhere, if that was to remove it.
function standsAt(line, { value, to, dataset }) {
  const [what, button = ""] = value?.split(" ") ?? [];
  const place = to ?? dataset?.to ?? button;
  const list = place.slice(0, place.lastIndexOf(".") + 1);
  const moved = Number(place.slice(list.length));
  if (!moved || !line.startsWith(list)) return line;
  const [old, ...inside] = line.slice(list.length).split(".");
  const number = Number(old);
  const other = what === "up" ? moved - 1 : moved + 1;
  const swaps = ["up", "down"].includes(what) && byValue(`${what} ${list}${other}`);
  if (what === "remove" && number === moved) return null;
  if (what === "back") return list + [number + (number >= moved), ...inside].join(".");
  const shift = number > moved ? { remove: -1, copy: 1 }[what] ?? 0 : 0;
  const swapped = swaps ? { [moved]: other, [other]: moved }[number] : null;
  return list + [swapped ?? number + shift, ...inside].join(".");
}

const byValue = (value) => [...form().elements].find((each) => each.value === value);

// Lines change their numbers under those who wait: each goes on with the line that it was beside.
function renumberQueue(done) {
  for (const each of queue) {
    const [what, place = ""] = each.value.split(" ");
    if (what === "back") continue; // its number stays what it is
    const now = standsAt(place, done);
    each.value = now === null ? null : [what, now].join(" ").trim();
  }
  queue = queue.filter((each) => each.value !== null);
}

function press(button) {
  if (!button.leaves) return act(button);
  const same = ({ type, value, formAction }) =>
    type === "submit" && value === button.value && formAction === button.formAction;
  [...form().elements].find(same)?.click();
}

function wait({ name, value, id, formAction, dataset }, leaves) {
  // Before all has come into the form, its lines are not those that will be there.
  if (leaves || (value && !takeover) || value.startsWith("add ")) queue.push({ name, value, id, formAction, to: dataset?.to, leaves });
}
