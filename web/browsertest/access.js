// Returns what is wrong with the page for somebody who cannot see it, cannot point at it, or sees it poorly,
// as far as it can be told from the page itself. Beside each check: the success criterion of WCAG 2.2.
(() => {
  const faults = [];
  const fault = (criterion, element, what) =>
    faults.push(`${criterion} ${element.tagName.toLowerCase()}${element.id ? "#" + element.id : ""}: ${what}`);
  const all = (selector) => [...document.querySelectorAll(selector)];
  const shown = (e) => e.checkVisibility({ visibilityProperty: true }) && !e.closest("[aria-hidden=true]");
  const named = (e) =>
    (e.getAttribute("aria-label") ?? "").trim() ||
    (e.getAttribute("aria-labelledby") ?? "").split(" ").map((id) => document.getElementById(id)?.textContent ?? "").join("").trim() ||
    [...(e.labels ?? [])].map((l) => l.textContent).join("").trim() ||
    e.textContent.trim() || (e.getAttribute("title") ?? "").trim();

  if (!document.documentElement.lang) fault("3.1.1", document.documentElement, "no language");
  if (!document.title.trim()) fault("2.4.2", document.documentElement, "no title");
  if (/user-scalable|maximum-scale/.test(document.querySelector("meta[name=viewport]").content))
    fault("1.4.4", document.documentElement, "zooming is forbidden");
  for (const landmark of ["main", "h1"])
    if (all(landmark).filter(shown).length !== 1) fault("1.3.1", document.body, `not exactly one ${landmark}`);
  let level = 0;
  for (const h of all("h1,h2,h3,h4,h5,h6").filter(shown)) {
    const next = Number(h.tagName[1]);
    if (next > level + 1) fault("1.3.1", h, `a level is left out before "${h.textContent}"`);
    level = next;
  }
  const ids = all("[id]").map((e) => e.id);
  for (const id of new Set(ids)) if (ids.filter((x) => x === id).length > 1) fault("4.1.2", document.getElementById(id), "its id stands twice");
  for (const e of all("[aria-labelledby],[aria-describedby],[aria-controls]"))
    for (const name of ["aria-labelledby", "aria-describedby", "aria-controls"])
      for (const id of (e.getAttribute(name) ?? "").split(" ").filter(Boolean))
        if (!document.getElementById(id)) fault("4.1.2", e, `${name} points to ${id}, which is not there`);
  for (const e of all("a[href],button,input,select,textarea,summary,[role=button],[tabindex='0'],section,nav,table").filter(shown))
    if (!["SECTION", "NAV", "TABLE"].includes(e.tagName) || e.hasAttribute("aria-labelledby")) if (!named(e)) fault("4.1.2", e, "no name");
  for (const e of all("img:not([alt])")) fault("1.1.1", e, "no text for the picture");
  for (const e of all("svg").filter((e) => !e.closest("[aria-hidden=true]")))
    if (e.getAttribute("role") !== "img" || !named(e)) fault("1.1.1", e, "no text for the drawing");
  for (const e of all("th")) if (!e.scope) fault("1.3.1", e, "a heading of nothing");
  for (const e of all("[tabindex]")) if (e.tabIndex > 0) fault("2.4.3", e, "it takes the keyboard out of order");
  for (const e of all("a[href],button,input,select").filter(shown)) {
    const box = e.getBoundingClientRect();
    if (box.width < 24 || box.height < 24) fault("2.5.8", e, `too small to hit: ${box.width.toFixed()} × ${box.height.toFixed()}`);
  }

  // 1.4.3: contrast of text against the nearest background that is painted.
  const channel = (v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
  const light = ([r, g, b]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
  const colour = (text) => text.match(/[\d.]+/g).map(Number);
  const behind = (e) => {
    for (; e; e = e.parentElement) {
      const c = colour(getComputedStyle(e).backgroundColor);
      if (c.length === 3 || c[3] === 1) return c;
    }
    return [255, 255, 255];
  };
  let texts = 0;
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const e = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || !e.checkVisibility()) continue;
    texts++;
    const [a, b] = [light(colour(getComputedStyle(e).color)), light(behind(e))].sort((x, y) => y - x);
    const ratio = (a + 0.05) / (b + 0.05);
    if (ratio < 4.5) fault("1.4.3", e, `contrast ${ratio.toFixed(2)} of "${walk.currentNode.data.trim()}"`);
  }
  if (texts < 10) fault("check", document.body, "too little text was found to check");
  return faults;
})()
