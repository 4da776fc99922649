"use strict";
// Beside the picker of a colour stands its code, to be read, typed or pasted. The code is then what
// is sent, so that a mistake in it is told and not lost; without a script the picker is.

const CODE = /^#[0-9a-f]{6}$/i;

function codeBeside(picker) {
  const code = document.createElement("input");
  code.className = "code";
  code.name = picker.name;
  code.value = picker.value;
  code.maxLength = 20;
  code.spellcheck = false;
  code.setAttribute("aria-label", `${picker.getAttribute("aria-label")}: code`);
  picker.removeAttribute("name");
  picker.addEventListener("input", () => { code.value = picker.value; });
  code.addEventListener("input", () => {
    const typed = code.value.trim();
    const whole = typed.startsWith("#") ? typed : `#${typed}`;
    if (!CODE.test(whole)) return;
    code.value = whole;
    picker.value = whole.toLowerCase();
  });
  picker.after(code);
}

document.querySelectorAll('input.colour[type="color"]').forEach(codeBeside);
