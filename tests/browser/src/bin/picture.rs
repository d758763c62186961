//! Takes the README's picture of the app: a fall that held, with its marks, at laptop size.

use browser_tests::{LAPTOP, Page, Res, root};

#[tokio::main]
async fn main() -> Res {
    let page = Page::open(LAPTOP).await?;
    page.js("document.documentElement.dataset.theme = 'light'").await?;
    page.drawer().await?;
    page.js("document.querySelector(\"input[name=arrow][value='1']\").click()").await?;
    page.fall(1).await?;
    page.js("document.querySelector('#leave-fall').click()").await?;
    page.drawer().await?;
    page.js("document.querySelector(\"input[name=arrow][value='0']\").click()").await?;
    page.fall(0).await?;
    page.wait(".plate-button").await?;
    std::fs::write(root().join("public/picture.png"), page.screenshot().await?)?;
    page.close().await
}
