# What we heard, what changed: remarks pinned to the drawing, votes on them, and the steps that answer them. A dot is a
# vote, as dots are stuck to a sheet.

remarks-title = What we heard, what changed
remarks-count = { $count ->
    [0] No remark is on the drawing yet.
    [one] { $open ->
        [0] 1 remark, answered.
       *[other] 1 remark, not answered yet.
    }
   *[other] { $open ->
        [0] { $count } remarks, all answered.
       *[other] { $count } remarks, { $open } not answered yet.
    }
}
remarks-sort = In order of
remarks-by-votes = dots
remarks-by-table = table
remarks-by-number = number on the drawing
remarks-write = Write a remark
remarks-text = Save as text
remarks-dots = { $count ->
    [one] { $count } dot
   *[other] { $count } dots
}
remarks-dots-of = { $count } of { $present } dots
remarks-open = Not answered yet.
remarks-answered = answered
remarks-answer = Answer this
remarks-answer-about = What you draw now is linked to this remark. Earlier steps can be linked here or in the history.
remarks-answering = Answering remark { $number }
remarks-answering-said = Answering remark { $number }. What you draw now is linked to it.
remarks-answering-none = No remark is being answered.
remarks-done = Done answering
remarks-moment = before remark { $number }
remarks-link-step = An earlier step
remarks-link = Link
remarks-link-selected = Link what is selected
remarks-select-first = Select on the drawing what answers the remark first.
remarks-link-what = Link: { $what }
remarks-unlink-what = Unlink: { $what }
remarks-changes = Changed since, more than rounding and range:
remarks-keep = Keep these figures with the remark
# A figure and its change, such as "Homes: 12 homes more".
remarks-figure = { $figure }: { $change }
# A step of the history in the list of those that can be linked.
remarks-step = { $number }: { $step }
remarks-step-elsewhere = { $step } ({ $alternative })
remarks-gone = What was linked is gone.
remarks-text-title = What we heard, what changed: { $plan }
remarks-step-link = link to remark
remarks-step-unlink = unlink from remark
remarks-step-figures = keep figures with remark
