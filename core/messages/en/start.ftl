# Sentences of the page before its module runs, and of what stands above it.

page-loading = Loading…
page-stopped = The page has stopped because of a fault of its own. Reload it to go on.
page-stopped-save = Save the plan as it was before the fault
page-new-version = A new version is here; the plan stays.
page-new-version-not-kept = The plan is not kept: save it, and close the page.
page-new-version-use = Use the new version

# Before another language is used the page starts anew.
language-not-kept = The plan is not kept in this browser: save it as a file before you change the language.
language-refused = This browser remembers no language: { $reason }
