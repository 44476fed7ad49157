// Filters the rows; without it every row is shown.
(() => {
  const form = document.querySelector("form.filters");
  const told = form.querySelector("output");
  const rows = [...document.querySelectorAll("table.chart tbody tr")].map(row => ({ row, words: row.textContent.toLowerCase() }));
  const show = () => {
    const { vehicle, role, size, status, words } = Object.fromEntries(new FormData(form));
    const wanted = words.toLowerCase().split(/\s+/).filter(w => w);
    let shown = 0;
    for (const { row, words: text } of rows) {
      const fits = (!role || row.dataset.role === role) && (!size || row.dataset.size === size)
        && (!status || row.dataset.status === status) && wanted.every(w => text.includes(w));
      row.hidden = !fits;
      if (fits && (status === "fail" || row.dataset.status !== "fail") && (!vehicle || row.closest("section").dataset.vehicle === vehicle))
        shown++;
    }
    const filtered = vehicle || role || size || status || wanted.length;
    for (const section of document.querySelectorAll("section[data-vehicle]")) {
      const some = [...section.querySelectorAll("tbody tr")].some(r => !r.hidden);
      section.hidden = (vehicle && section.dataset.vehicle !== vehicle) || !some;
      for (const table of section.querySelectorAll("table"))
        table.hidden = ![...table.tBodies[0].rows].some(r => !r.hidden);
      const misfits = section.querySelector("details");
      if (misfits) {
        misfits.open = status === "fail";
        misfits.hidden = misfits.querySelector("table").hidden;
      }
    }
    told.textContent = filtered ? `${shown} ${shown === 1 ? "row" : "rows"} shown` : "";
  };
  form.hidden = false;
  form.addEventListener("input", show);
  form.addEventListener("reset", () => setTimeout(show));
  form.addEventListener("submit", e => e.preventDefault());
})();
