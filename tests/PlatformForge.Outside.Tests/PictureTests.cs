
namespace PlatformForge.Outside.Tests;

[Collection("samples drawn")]
public class PictureTests(WrittenSamples samples)
{
    // Share of a drawing that may be bare paper.
    private const double Blank = 0.995;

    [Fact]
    public void Every_drawing_is_drawn_by_a_vector_renderer()
    {
        WithFolder(folder =>
        {
            string[] drawings = [.. samples.Files(".svg")], pngs = [.. drawings.Select((_, i) => Path.Combine(folder, i + ".png"))];
            Parallel.For(0, drawings.Length, i =>
            {
                var said = Tool.Run("rsvg-convert", "--width", "800", "--keep-aspect-ratio", "--output", pngs[i], drawings[i]);
                Assert.True(said.Exit == 0 && said.Error.Length == 0, $"{drawings[i]}\n{said.All}");
            });
            AssertDrawn(pngs);
        });
    }

    // Two of every kind, where the names end alike.
    [Fact]
    public void Every_kind_of_drawing_is_drawn_by_a_browser()
    {
        string[] some = [.. samples.Files(".svg").GroupBy(f => Path.GetFileName(f).Split('-')[^1]).SelectMany(kind => kind.Take(2))];
        Assert.True(some.Length > 12, $"{some.Length} drawings");
        WithFolder(folder =>
        {
            string[] pngs = [.. some.Select((_, i) => Path.Combine(folder, i + ".png"))];
            Tool.Node("draw.mjs", [Path.Combine(folder, "profile"), .. some.Zip(pngs, (drawing, png) => (string[])[drawing, png]).SelectMany(pair => pair)]);
            AssertDrawn(pngs);
        });
    }

    [Fact]
    public void Every_picture_is_decoded_by_others_and_shows_something()
    {
        Assert.All(Written.Parse(Tool.Node("read-png.mjs", samples.Files(".png"))), picture =>
        {
            Assert.True(picture.Number("width") >= 200 && picture.Number("height") >= 100, picture.ToString());
            Assert.True(picture.Number("shades") > 8 && picture.Number("background") < Blank, picture.ToString());
        });
    }

    private static void AssertDrawn(string[] pngs)
    {
        var seen = Written.Parse(Tool.Node("read-png.mjs", pngs)).ToArray();
        Assert.Equal(pngs.Length, seen.Length);
        Assert.All(seen, picture => Assert.True(picture.Number("shades") > 8 && picture.Number("background") < Blank, picture.ToString()));
    }

    private static void WithFolder(Action<string> work)
    {
        string folder = Directory.CreateTempSubdirectory("platformforge-pictures-").FullName;
        try
        {
            work(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
