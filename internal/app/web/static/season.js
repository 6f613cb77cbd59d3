// Season, worked out while one types: few runs first, then all. Without this
// file the form's button does the same.
import { worked } from "./worked.js";

const form = document.getElementById("season");
worked(form, location.pathname + form.elements.tub.value);
