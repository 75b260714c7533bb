/** From the very start of a page: what its policy refuses, and the pieces it is drawn of. */
(() => {
  document.addEventListener("securitypolicyviolation", (event) => {
    const { effectiveDirective, blockedURI, sample } = event;
    console.error(`refused by ${effectiveDirective}: ${blockedURI} ${sample}`);
  });
  window.pieces = new Set();
  const { importNode } = Document.prototype;
  Document.prototype.importNode = function (node, ...how) {
    for (const each of document.querySelectorAll("template[data-piece]")) {
      if (each.content === node) window.pieces.add(each.dataset.piece);
    }
    return importNode.call(this, node, ...how);
  };
})();
