# Words that many places use.

# The name of this language in itself.
language-name = Español

count-streets = { $count ->
    [one] { $count } calle
   *[other] { $count } calles
}
