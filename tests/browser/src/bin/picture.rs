//! Takes the README's picture of the app: a fall after its verdict, at laptop size.

use browser_tests::{LAPTOP, Page, Res, root};
use thirtyfour::prelude::*;

#[tokio::main]
async fn main() -> Res {
    let page = Page::open(LAPTOP).await?;
    page.js("document.documentElement.dataset.theme = 'light'").await?;
    page.click("input[name=arrow][value='1']").await?;
    let answers = page.driver.find_all(By::Css(".answer input")).await?;
    answers[1].click().await?;
    page.click("#play").await?;
    page.click(".player .main").await?;
    page.wait("#verdict").await?;
    page.click("input[name=arrow][value='0']").await?;
    let answers = page.driver.find_all(By::Css(".answer input")).await?;
    answers[0].click().await?;
    page.click("#play").await?;
    page.click(".player .main").await?;
    page.wait("#verdict").await?;
    page.js("window.scrollTo(0, 0)").await?;
    std::fs::write(root().join("public/picture.png"), page.screenshot().await?)?;
    page.close().await
}
