"use strict";
(() => {
  const filter = document.getElementById("filter");
  if (!filter) return;
  filter.hidden = false;
  const boxes = [...filter.querySelectorAll("input")];
  const tag = document.getElementById("by-tag");
  const check = document.getElementById("by-check");
  const shown = document.getElementById("shown");
  const items = [...document.querySelectorAll("#list > li")];
  const notes = items.map((item) => document.getElementById(item.firstElementChild.hash.slice(1)));
  let at = -1;

  const wanted = (item) =>
    boxes.some((box) => box.checked && box.value === item.dataset.level) &&
    (!tag.value || item.dataset.tags.includes("|" + tag.value + "|")) &&
    (!check.value || item.dataset.check === check.value);

  const apply = () => {
    let count = 0;
    items.forEach((item, i) => {
      const on = wanted(item);
      item.hidden = !on;
      if (notes[i]) notes[i].hidden = !on;
      if (on) count++;
    });
    shown.textContent = count === items.length ? String(count) : count + " of " + items.length;
  };

  const go = (by) => {
    let i = at;
    do i += by; while (i >= 0 && i < items.length && items[i].hidden);
    if (i < 0 || i >= items.length) return;
    at = i;
    location.hash = notes[i].id;
    notes[i].focus({ preventScroll: true });
  };

  addEventListener("hashchange", () => {
    const i = notes.findIndex((note) => note && "#" + note.id === location.hash);
    if (i >= 0) at = i;
  });
  filter.addEventListener("change", apply);
  document.getElementById("before").addEventListener("click", () => go(-1));
  document.getElementById("next").addEventListener("click", () => go(1));
  document.getElementById("all").addEventListener("click", () => {
    boxes.forEach((box) => { box.checked = true; });
    tag.value = "";
    check.value = "";
    apply();
  });
  // A browser keeps what was chosen when the page is loaded again.
  apply();
})();
