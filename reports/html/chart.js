// Filters the list of reasons and what the picture shows of it; without it everything is shown.
(() => {
  const form = document.querySelector("form.filters");
  const told = form.querySelector("output");
  const rows = [...document.querySelectorAll("table.chart tbody tr")].map(row => ({ row, words: row.textContent.toLowerCase() }));
  const marks = [...document.querySelectorAll("table.picture a")].map(mark => ({ mark, row: document.getElementById(mark.hash.slice(1)) }));
  const show = () => {
    const { vehicle, role, size, status, words } = Object.fromEntries(new FormData(form));
    const wanted = words.toLowerCase().split(/\s+/).filter(w => w);
    let shown = 0;
    for (const { row, words: text } of rows) {
      const fits = (!role || row.dataset.role === role) && (!size || row.dataset.size === size)
        && (!status || row.dataset.status === status) && wanted.every(w => text.includes(w));
      row.hidden = !fits;
      if (fits && (!vehicle || row.closest("section").dataset.vehicle === vehicle))
        shown++;
    }
    for (const { mark, row } of marks)
      mark.hidden = row.hidden;
    for (const driver of document.querySelectorAll("table.picture tbody tr"))
      driver.hidden = ![...driver.querySelectorAll("a")].some(a => !a.hidden);
    for (const section of document.querySelectorAll("section[data-vehicle]")) {
      const some = [...section.querySelectorAll("tbody tr")].some(r => !r.hidden);
      section.hidden = (vehicle && section.dataset.vehicle !== vehicle) || !some;
      for (const table of section.querySelectorAll("table"))
        table.hidden = ![...table.tBodies[0].rows].some(r => !r.hidden);
      for (const list of section.querySelectorAll("details"))
        list.hidden = list.querySelector("table").hidden;
    }
    const filtered = vehicle || role || size || status || wanted.length;
    told.textContent = filtered ? `${shown} ${shown === 1 ? "row" : "rows"} shown` : "";
  };
  // Browsers of late do so by themselves.
  const unfold = () => document.getElementById(location.hash.slice(1))?.closest("details")?.setAttribute("open", "");
  form.hidden = false;
  form.addEventListener("input", show);
  form.addEventListener("reset", () => setTimeout(show));
  form.addEventListener("submit", e => e.preventDefault());
  addEventListener("hashchange", unfold);
  unfold();
})();
