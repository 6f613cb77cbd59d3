// Mix, worked out while one types. Without this file the form's button does the
// same.
import { worked } from "./worked.js";

const form = document.getElementById("mix");
worked(form, location.pathname + form.elements.tub.value, "bottle.");
