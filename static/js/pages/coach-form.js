/** The coach's form: what the server would turn away is told before it is sent. On the page that says no, going back could lose what was typed. */
const form = document.querySelector("[data-largest]");
const said = document.querySelector("[data-too-much]");

const bytesOf = (data) => new URLSearchParams(data).toString().replaceAll("%0A", "%0D%0A").length;

form.addEventListener("submit", (event) => {
  const tooMuch = bytesOf(new FormData(form, event.submitter)) > Number(form.dataset.largest);
  said.hidden = !tooMuch;
  if (!tooMuch) return;
  event.preventDefault();
  said.focus();
});
