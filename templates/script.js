// Numbers say where they come from when pointed at or reached by keyboard; the rest works without this.
"use strict";
(() => {
  const number = (event) => event.target.closest("button.traced");
  const note = (button) => document.getElementById(button.getAttribute("popovertarget"));
  const open = () => document.querySelector(".origin:popover-open");
  let timer = 0, kept = null;

  const show = (button) => {
    if (!note(button).matches(":popover-open")) note(button).showPopover({ source: button });
  };
  const later = (action, wait) => {
    clearTimeout(timer);
    timer = setTimeout(action, wait);
  };
  document.addEventListener("mouseover", (event) => {
    const button = number(event);
    if (button) later(() => { if (open() !== note(button)) { kept = null; show(button); } }, 150);
    else if (event.target.closest(".origin")) clearTimeout(timer);
    else later(() => { if (open() && open() !== kept) open().hidePopover(); }, 350);
  });
  document.addEventListener("click", (event) => {
    if (number(event)) kept = note(number(event));
    if (event.target.closest(".origin a, .menu a"))
      document.querySelectorAll(":popover-open").forEach((each) => each.hidePopover());
  });
  document.addEventListener("focusin", (event) => {
    const button = number(event);
    if (button && button.matches(":focus-visible")) { show(button); kept = note(button); }
    else if (!button && open() && !event.target.closest(".origin")) open().hidePopover();
  });
})();
