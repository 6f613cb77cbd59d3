// On a phone the answer, the lid and its papers come first, the rest is folded.
if (matchMedia("(max-width: 900px)").matches) {
  for (const fold of document.querySelectorAll("details.fold")) fold.open = false;
}
