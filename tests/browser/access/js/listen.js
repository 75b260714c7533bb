/** Every place that speaks by itself, and what it has said; hidden ones say nothing. */
() => {
  window.spoken = [];
  const lives = "[role=status], [role=alert], [aria-live=polite], [aria-live=assertive]";
  new MutationObserver((changes) => {
    const said = new Set();
    for (const { target } of changes) {
      const it = target instanceof Element ? target : target.parentElement;
      const place = it?.closest(lives);
      if (place?.checkVisibility()) said.add(place);
    }
    for (const place of said) {
      const text = place.textContent.trim();
      if (text) window.spoken.push([Object.keys(place.dataset).join(), text]);
    }
  }).observe(document.body, { childList: true, characterData: true, subtree: true });
};
