# Plans of several tables are opened together as alternatives of one plan. $file is the name of a table's file.

gather-elsewhere = { $file } is of another place on Earth and is not taken in
gather-nothing-new = { $file } draws nothing that is not there already
# The name of an alternative where another table's has the same.
gather-name = { $name }, { $file }
gather-site-differs = the site's boundary of { $file } differs and is left out
gather-program-differs = the program of { $file } differs and is left out
gather-settings-differ = the settings or factors of { $file } differ and are left out
gather-ground-differs = the ground heights of { $file } differ and are left out
gather-picture-differs = the base picture of { $file } differs and is left out
gather-opened = Opened { $files } files: { $alternatives } alternatives side by side.
gather-not-all = Not all of the files was taken in: { $reasons }.
