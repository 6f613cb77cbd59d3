// Choose, worked out while one types. Without this file the form's button does
// the same.
import { worked } from "./worked.js";

worked(document.getElementById("choose"), location.pathname, "kit.");
