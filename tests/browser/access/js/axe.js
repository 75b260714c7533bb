/** What axe-core objects to: all of its rules for these tags, or some rules alone. */
async ([tags, rules]) => {
  const only = rules.length ? { type: "rule", values: rules } : { type: "tag", values: tags };
  const { violations } = await axe.run(document, {
    runOnly: only,
    // It is off unless it is asked for. The other one is on trial, and wants the words of
    // a button in one piece: "2, there" in "2 iron, there" is none to it.
    rules: rules.length ? {} : {
      "target-size": { enabled: true }, "label-content-name-mismatch": { enabled: false },
    },
    resultTypes: ["violations"],
    preload: false,
  });
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html, any, all, none }) => {
    const [why] = [...any, ...all, ...none];
    return `${id}: ${html.slice(0, 160)} ${why?.message ?? ""}`;
  }));
};
