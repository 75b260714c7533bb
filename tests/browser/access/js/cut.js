/** What is wider than the screen, or cut off by what holds it. */
() => {
  const cut = [...document.querySelectorAll("body *")].filter((each) => {
    if (each.closest("svg, .unseen") || !each.checkVisibility()) return false;
    const { overflowX, textOverflow } = getComputedStyle(each);
    if (!["hidden", "clip"].includes(overflowX) || textOverflow === "ellipsis") return false;
    return each.scrollWidth > each.clientWidth + 1 && each.innerText?.trim();
  }).map((each) => `cut off: ${each.outerHTML.slice(0, 120)}`);
  const over = document.documentElement.scrollWidth - innerWidth;
  return over > 0 ? [`${over} pixels wider than the screen`, ...cut] : cut;
};
