const form = document.getElementById("entry");
