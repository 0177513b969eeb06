package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.Select;

/**
 * The page in headless Chromium, where the machine has it with its driver. Pictures of it are left
 * under {@code target/view}.
 */
class ViewInBrowserTest {
  private static final Path PICTURES = Path.of("target/view");
  private static final String AXE = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";
  private static final int WRONG_TILES = 400;
  private static final int PAGES = 500;

  @TempDir static Path folder;
  private static ChromeDriver browser;
  private static Path sample;

  private static File program(String... names) {
    for (String name : names)
      for (String place : List.of("/usr/bin", "/usr/lib/chromium", "/usr/local/bin")) {
        File file = new File(place, name);
        if (file.canExecute()) return file;
      }
    return null;
  }

  @BeforeAll
  static void a_browser_and_a_page() throws IOException {
    File chromium = program("chromium", "chromium-browser");
    File driver = program("chromedriver");
    assumeTrue(chromium != null && driver != null, "no Chromium with its driver here");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(chromium);
    options.addArguments("--headless=new", "--no-sandbox", "--disable-dev-shm-usage");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    browser =
        new ChromeDriver(
            new ChromeDriverService.Builder().usingDriverExecutable(driver).build(), options);
    Files.createDirectories(PICTURES);
    sample = view("sample", Path.of("sample-specs/draft"));
  }

  @AfterAll
  static void close() {
    if (browser != null) browser.quit();
  }

  private static Path view(String name, Path documents) {
    Path page = folder.resolve(name + ".html");
    Shell shell =
        Shell.run(
            "check", documents, "-o", folder.resolve(name + ".xlsx"), "--view", page, "--quiet");
    assertThat(shell.code()).as(shell.err()).isLessThan(2);
    return page;
  }

  private static void open(Path page, int width, int height, String scheme) {
    browser.manage().window().setSize(new Dimension(width, height));
    browser.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    browser.get(page.toUri().toString());
  }

  private static void picture(String name) throws IOException {
    Files.write(PICTURES.resolve(name + ".png"), browser.getScreenshotAs(OutputType.BYTES));
  }

  private static long shown(String selector) {
    return (Long)
        browser.executeScript(
            "return [...document.querySelectorAll(arguments[0])].filter(e => !e.hidden).length",
            selector);
  }

  private static boolean inSight(String selector) {
    return (Boolean)
        browser.executeScript(
            "const r = document.querySelector(arguments[0]).getBoundingClientRect();"
                + "return r.bottom > 0 && r.top < innerHeight;",
            selector);
  }

  private static void nothingWasRefused() {
    assertThat(browser.manage().logs().get(LogType.BROWSER).getAll()).isEmpty();
  }

  @Test
  void it_loads_nothing_and_its_own_script_runs() {
    open(sample, 1400, 1000, "light");
    nothingWasRefused();
    assertThat(browser.findElement(By.id("filter")).isDisplayed()).isTrue();
    assertThat(browser.executeScript("return performance.getEntriesByType('resource').length"))
        .isEqualTo(0L);
    browser.executeScript(
        "const s = document.createElement('script'); s.textContent = 'window.ran = 1';"
            + "document.body.append(s); document.body.setAttribute('onclick', 'window.ran = 1');"
            + "document.body.click();");
    assertThat(browser.executeScript("return window.ran === undefined")).isEqualTo(true);
    browser.manage().logs().get(LogType.BROWSER);
  }

  @Test
  void findings_are_filtered_by_level_tile_and_check() {
    open(sample, 1400, 1000, "light");
    long all = shown("#list > li");
    assertThat(shown("article.finding")).isEqualTo(all);

    browser.findElement(By.cssSelector("#filter input[value=error]")).click();
    assertThat(shown("#list > li")).isBetween(1L, all - 1);
    assertThat(shown("#list > li[data-level=error]")).isZero();
    assertThat(shown("article.finding[data-level=error]")).isZero();
    assertThat(browser.findElement(By.id("shown")).getText()).endsWith(" of " + all);

    browser.findElement(By.id("all")).click();
    new Select(browser.findElement(By.id("by-tag"))).selectByValue("GT-7");
    long ofTile = shown("#list > li");
    assertThat(ofTile).isBetween(1L, all - 1);
    new Select(browser.findElement(By.id("by-check"))).selectByValue("mortar-class");
    assertThat(shown("#list > li")).isBetween(1L, ofTile);
    assertThat(shown("article.finding")).isEqualTo(shown("#list > li"));
    browser.findElement(By.id("all")).click();
    assertThat(shown("#list > li")).isEqualTo(all);
  }

  @Test
  void a_finding_and_an_unread_place_are_one_press_away_by_keyboard() {
    open(sample, 1400, 1000, "light");
    WebElement item = browser.findElements(By.cssSelector("#list a")).get(9);
    String target = item.getDomAttribute("href");
    item.sendKeys(Keys.ENTER);
    assertThat(browser.getCurrentUrl()).endsWith(target);
    assertThat(inSight(target)).isTrue();

    WebElement unread = browser.findElement(By.cssSelector("section[aria-labelledby=unread] a"));
    unread.sendKeys(Keys.ENTER);
    assertThat(inSight(unread.getDomAttribute("href"))).isTrue();

    browser.findElement(By.id("next")).sendKeys(Keys.ENTER);
    assertThat(browser.switchTo().activeElement().getDomAttribute("class")).startsWith("finding ");
    browser.get(sample.toUri().toString());
    browser.switchTo().activeElement().sendKeys(Keys.TAB);
    assertThat(browser.switchTo().activeElement().getText()).isEqualTo("To the documents");
  }

  @Test
  void the_values_of_a_tile_lead_to_their_places() {
    open(sample, 1400, 1000, "light");
    WebElement tile = browser.findElement(By.cssSelector("details.tile"));
    tile.findElement(By.tagName("summary")).sendKeys(Keys.ENTER);
    WebElement place = tile.findElement(By.cssSelector("li a"));
    place.click();
    assertThat(inSight(place.getDomAttribute("href"))).isTrue();
  }

  @Test
  void axe_finds_nothing_serious_in_light_and_dark_narrow_and_wide() throws IOException {
    String axe;
    try (InputStream in = ViewInBrowserTest.class.getResourceAsStream(AXE)) {
      axe = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    Path documents = Files.createDirectories(folder.resolve("small"));
    Files.writeString(
        documents.resolve("schedule.csv"),
        "Tag,Material,Mortar,Zylk,Price\nGT-1,Glass mosaic,ANSI A118.1,Qua,9\n"
            + "GT-2,Glass mosaic,TBD,Qua,9\nPT-1,Porcelain tile,ANSI A118.4,,3\n");
    Files.writeString(
        documents.resolve("notes.txt"),
        "TILE NOTES\n\n1. Glass tile: mortar coverage 70 %.\n2. Glass tile: hold 450 psi sideways.\n");
    Path small = view("small", documents);
    browser.manage().timeouts().scriptTimeout(Duration.ofMinutes(5));
    for (String scheme : List.of("light", "dark")) {
      for (int width : List.of(420, 1400)) {
        open(sample, width, 1000, scheme);
        picture("top-" + scheme + "-" + width);
        browser.get(sample.toUri() + "#f3");
        picture("finding-" + scheme + "-" + width);
        open(small, width, 1000, scheme);
        browser.executeScript(
            "document.querySelectorAll('details').forEach(d => d.open = true);"
                + "document.querySelectorAll('.chunk, .list li').forEach(c => c.style.contentVisibility = 'visible');");
        browser.executeScript(axe);
        Object wrong =
            browser.executeAsyncScript(
                "const done = arguments[arguments.length - 1];"
                    + "axe.run({resultTypes: ['violations']}).then(r => done(r.violations"
                    + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                    + ".map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html).join(' '))));");
        assertThat((List<?>) wrong).as(scheme + " " + width).isEmpty();
      }
    }
    open(sample, 1400, 1000, "light");
  }

  @Test
  void hostile_texts_are_shown_and_nothing_of_them_happens() throws IOException {
    Path documents = Files.createDirectories(folder.resolve("hostile"));
    Files.writeString(
        documents.resolve("schedule.csv"),
        "Tag,Material,Remarks\nGT-1,<script>window.gone=1</script> glass mosaic,"
            + "<a href=javascript:window.gone=1>here</a>\n"
            + "GT-2,<img src=x onerror=window.gone=1> glass tile,\u202Erevoc\u202C\n");
    open(view("hostile", documents), 1400, 1000, "light");
    nothingWasRefused();
    assertThat(browser.executeScript("return window.gone === undefined")).isEqualTo(true);
    assertThat(browser.findElements(By.cssSelector("table a[href^=javascript], table img")))
        .isEmpty();
    assertThat(browser.findElement(By.tagName("table")).getText())
        .contains("<script>window.gone=1</script> glass mosaic")
        .contains("<a href=javascript:window.gone=1>here</a>")
        .contains("[U+202E]revoc[U+202C]");
    picture("hostile");
  }

  @Test
  void printed_it_has_the_documents_and_the_findings_and_no_buttons() throws IOException {
    open(sample, 1400, 1000, "light");
    Object data =
        browser.executeCdpCommand("Page.printToPDF", Map.of("printBackground", false)).get("data");
    byte[] pdf = Base64.getDecoder().decode(data.toString());
    Files.write(PICTURES.resolve("printed.pdf"), pdf);
    try (PDDocument printed = Loader.loadPDF(pdf)) {
      String text = new PDFTextStripper().getText(printed).replaceAll("\\s+", " ");
      assertThat(text)
          .contains("JOINT SEALANTS")
          .contains("Suggested clause")
          .contains("licensed professional decide")
          .doesNotContain("Show all");
      assertThat(printed.getNumberOfPages()).isGreaterThan(5);
    }
  }

  /**
   * A schedule in which every tile is wrong twice and more, and a specification as thick as a book.
   */
  @Test
  void two_thousand_findings_and_five_hundred_pages_stay_usable() throws IOException {
    Path documents = Files.createDirectories(folder.resolve("large"));
    StringBuilder schedule =
        new StringBuilder("Tag,Material,Mortar standard,Shear bond strength,Mortar coverage\n");
    for (int i = 1; i <= WRONG_TILES; i++)
      schedule.append("GT-").append(i).append(",Glass mosaic,ANSI A118.1,300 psi,70 %\n");
    Files.writeString(documents.resolve("schedule.csv"), schedule);
    StringBuilder section = new StringBuilder("SECTION 09 30 00\nTILING\n\nPART 3 - EXECUTION\n\n");
    for (int page = 1; page <= PAGES; page++) {
      section.append("3.").append(page).append(" WORK ON LEVEL ").append(page).append("\n\n");
      for (char clause = 'A'; clause <= 'T'; clause++)
        section
            .append(clause)
            .append(". Glass tile on level ")
            .append(page)
            .append(" is laid out from the middle of the wall before setting begins.\n\n");
    }
    Files.writeString(documents.resolve("section.txt"), section);
    Path page = view("large", documents);
    long began = System.nanoTime();
    open(page, 1400, 1000, "light");
    long all = shown("#list > li");
    System.err.printf(
        "page of %d findings, %d KB: loaded in %d ms%n",
        all, Files.size(page) / 1024, (System.nanoTime() - began) / 1_000_000);
    assertThat(all).isGreaterThanOrEqualTo(2_000);
    began = System.nanoTime();
    new Select(browser.findElement(By.id("by-tag"))).selectByValue("GT-333");
    assertThat(shown("#list > li")).isBetween(6L, all / 10);
    assertThat(shown("article.finding")).isEqualTo(shown("#list > li"));
    browser.findElement(By.id("next")).click();
    System.err.printf("filtered and jumped in %d ms%n", (System.nanoTime() - began) / 1_000_000);
    assertThat(inSight("article.finding:focus")).isTrue();
    picture("large");
    browser.get(page.toUri() + "#d2");
    assertThat(inSight("#d2")).isTrue();
    assertThat(browser.findElement(By.id("documents")).getText()).contains("WORK ON LEVEL 500");
  }
}
