"use strict";
// What is typed is kept in this tab, twice: by the page's place in the tab's history, for a reload
// and for Back; and as the latest, which a page that is opened anew takes up.

const MOST_PLACES = 40; // older places are forgotten, so that the tab's store never fills up
let place = null; // the name under which this page's own copy is kept

function recall(name) {
  try {
    return sessionStorage.getItem(name);
  } catch {
    return null;
  }
}

function store(name, text) {
  try {
    sessionStorage.setItem(name, text);
  } catch {
    // A browser that stores nothing only forgets the order when the page is left.
  }
}

// When something was sent, by a clock that never goes back.
const turn = () => performance.timeOrigin + performance.now();

function newPlace() {
  const number = Number(recall("places") ?? 0) + 1;
  store("places", number);
  store(`place.${number - MOST_PLACES}`, "");
  return `place.${number}`;
}

// The address becomes one that can be opened anew: a page made by sending a form is then never
// sent again by Back or a reload.
function holdPlace(home) {
  place ??= history.state?.place ?? newPlace();
  if (history.state?.place !== place) history.replaceState({ place }, "", home);
  return recall(place);
}

// A link within the page makes a place of its own in the history, with the same form in it.
window.addEventListener("hashchange", () => holdPlace(location.href));
