/** What is in sight, by the classes that give it its colours and sizes. */
() => [...new Set([...document.querySelectorAll("body *")]
  .filter((each) => each.checkVisibility() && !each.closest("svg"))
  .map((each) => `${each.parentElement.getAttribute("class")} ${each.tagName} ` +
    `${each.getAttribute("class")} ${each.disabled} ${each.ariaPressed}`))];
