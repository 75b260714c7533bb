"""The web application: the phone's pages and the page that judges a find."""
