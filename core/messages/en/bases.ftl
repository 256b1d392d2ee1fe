# What is said when base data that was read is taken into the plan.

bases-step = take base data
bases-taken = Taken from { $file }: streets { $streets }, places { $places }, land held back { $areas }, barriers { $barriers }, buildings { $buildings }, parcels { $parcels }.
bases-left-out = Not taken: { $beyond } beyond the area, { $unfitting } of another shape than asked for, { $known } that the plan has already. Holes filled: { $holes }.
bases-no-extent = The distance must be a number from 0 to { $kilometers } km.
bases-no-site = No site is drawn yet. Choose a distance around the plan’s origin instead.
bases-no-unit = The unit must be more than 0 meters, and the turn a number of degrees.
bases-placed = The plan already lies somewhere. Its origin stays where it is.
bases-nothing-chosen = Nothing is chosen that could be taken. Choose layers, and what they become.
bases-nothing-within =
    { $count ->
        [one] The one thing that is chosen lies outside the area, or too far from the plan.
       *[other] All { $count } things that are chosen lie outside the area, or too far from the plan.
    }
bases-all-known =
    { $count ->
        [one] The plan has the one thing that is chosen already.
       *[other] The plan has all { $count } things that are chosen already.
    }
bases-too-many = More than { $limit } things would be taken, more than a plan can be drawn with. Choose a smaller area or fewer layers.
bases-old-module = The part of the page that reads base data is of another version. Reload the page.
bases-no-worker = The browser starts no worker, which reading base data needs.
bases-stopped = Reading stopped: { $fault }
