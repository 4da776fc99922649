"use strict";
// Opened from the top bar, the page takes the order that lies on the worktable, as this tab keeps it.

const STALE = "The order on the worktable has something to put right first, so it is not compared here.";

function takeWorktable(order, sizes) {
  const fields = new URLSearchParams(order);
  for (const [name, value] of new URLSearchParams(sizes ?? "")) {
    if (name !== "order_file") fields.append(name, value);
  }
  fields.set("csrf_token", sent().get("csrf_token"));
  fields.delete("do");
  ask(table().dataset.ofOrder, fields)
    .then((page) => (page.querySelector("#worktable.sizes") ? replaceTable(page) : age(STALE)))
    .catch(failed);
}

const orderKept = recall("order");
if (table().dataset.ofOrder && orderKept) takeWorktable(orderKept, recall("sizes"));
