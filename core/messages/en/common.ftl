# Words that many places use.

# The name of this language in itself.
language-name = English

count-streets = { $count ->
    [one] { $count } street
   *[other] { $count } streets
}
