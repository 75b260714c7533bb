/** What is chosen and has no line or letters of its own. Who may choose colours sees no
 * fillings; axe reads the colours that were asked for there, not those that are painted. */
() => {
  const lines = (it) => {
    const style = getComputedStyle(it);
    return ["outlineStyle", "borderTopStyle", "borderTopWidth", "borderBottomWidth", "fontWeight",
      "textDecorationLine", "forcedColorAdjust", "appearance"].map((name) => style[name]).join();
  };
  return [...document.querySelectorAll("[aria-pressed=true]")].filter((it) => {
    if (!it.checkVisibility()) return false;
    const others = [...it.parentElement.querySelectorAll("[aria-pressed=false]")];
    return others.some((other) => lines(other) === lines(it));
  }).map((it) => `chosen, and looks like the others: ${it.outerHTML.slice(0, 120)}`);
};
