# Sentences of the page before its module runs, and of what stands above it.

page-loading = Cargando…
page-stopped = La página se detuvo por un error propio. Vuelva a cargarla para continuar.
page-stopped-save = Guardar el plan como estaba antes del error
page-new-version = Hay una versión nueva; el plan se conserva.
page-new-version-not-kept = El plan no está guardado en este navegador: guárdelo como archivo y cierre la página.
page-new-version-use = Usar la versión nueva

# Before another language is used the page starts anew.
language-not-kept = El plan no está guardado en este navegador: guárdelo como archivo antes de cambiar de idioma.
language-refused = Este navegador no recuerda el idioma: { $reason }
