# How the page is set: for which place, and whether the plan is only looked at.

mode-menu = Page
mode-title = Set the page for
mode-desk = A desk
mode-desk-about = Everything at hand for one person drawing.
mode-projector = A projector
mode-projector-about = Words, lines and three figures are drawn large, to be read from the back of a room.
mode-board-left = A touch board, tools at the left
mode-board-right = A touch board, tools at the right
mode-board-about = Large targets, low on the board; everything answers to a tap. Once a pen has drawn here, fingers only move the view, until this menu lets them draw again.
# Each line stands on a line of its own.
mode-board-keys =
    Keys of a clicker or wireless keypad:
    Page Down finishes what is drawn.
    Page Up takes back the last point or step.
    B or the period key does it again.
    F5 or Escape gives up what was begun.
mode-pen-draws = The pen draws, fingers only move the view
mode-look-only = Only look: nothing can be changed
mode-looking = You are looking at this plan. Nothing here changes it.
mode-looking-next = What you open now is only looked at.
mode-look-at = Look at
mode-make-own = Make it mine
mode-own = The plan is yours to change.
mode-refused = This plan is only being looked at. Press “Make it mine” to change it or to open another.
mode-by-tap = What is being drawn
mode-finish = Finish
mode-key-finish = Page Down
mode-give-up = Give up
mode-key-give-up = Esc
mode-key-undo = Page Up
mode-key-redo = B
