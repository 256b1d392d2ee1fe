//! The page's entry point: everything it does is in the library, so that tests can import it.

fn main() {
    hobnail_web::start();
}
