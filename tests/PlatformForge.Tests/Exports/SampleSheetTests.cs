using PlatformForge.Exports.Drawings;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Geometry;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Every drawing of samples of each kind, looked at as a draughtsman does: a side platform, one on straight track in one piece, an island, a low one
/// with plates.</summary>
public class SampleSheetTests
{
    [Theory]
    [InlineData("sandhope")]
    [InlineData("straight-halt")]
    [InlineData("thornhithe")]
    [InlineData("quillhaven")]
    public void Words_of_no_drawing_lie_on_other_words_or_leave_the_frame_and_all_can_be_read(string sample)
    {
        var dossier = DesignRun.Design(Samples.Sound(PresetShelf.Sample(sample)!), new(_ => { }, default)).Value!;
        var faults = dossier.Platforms.SelectMany(p => PlatformDrawings.Of(dossier, p, "p", [])).SelectMany(d => Faults(d.Path, d.Sheet.Value)).ToArray();
        Assert.True(faults.Length == 0, string.Join('\n', faults));
    }

    private static IEnumerable<string> Faults(string path, Sheet sheet)
    {
        // The least nominal size of lettering is 1.8 mm (ISO 3098-1); words that were made to fit may not fall below it.
        const double Least = 1.8, Frame = 7;
        var texts = sheet.Items.OfType<SheetText>().Where(t => t.Text.Length > 0).ToArray();
        foreach (var text in texts)
        {
            if (text.Style.Size < Least)
            {
                yield return $"{path}: '{text.Text}' is {text.Style.Size:0.00} mm high";
            }

            if (text.Box().Any(c => c.X < Frame || c.Y < Frame || c.X > sheet.Width - Frame || c.Y > sheet.Height - Frame))
            {
                yield return $"{path}: '{text.Text}' leaves the frame";
            }
        }

        for (int i = 0; i < texts.Length; i++)
        {
            for (int j = i + 1; j < texts.Length; j++)
            {
                if (DrawingTests.Overlap(texts[i].Box(), texts[j].Box()))
                {
                    yield return $"{path}: '{texts[i].Text}' runs into '{texts[j].Text}'";
                }
            }
        }

        // Numbers in circles stand clear of one another, and no words but their own lie on them.
        SheetCircle[] circles = [.. sheet.Items.OfType<SheetCircle>().Where(c => c.Radius > 2)];
        foreach (var circle in circles)
        {
            if (circles.Any(c => c != circle && (c.Middle - circle.Middle).Length < c.Radius + circle.Radius))
            {
                yield return $"{path}: circles run into one another at {circle.Middle}";
            }

            Point2[] box =
                [.. new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) }.Select(k => circle.Middle + (new Point2(k.Item1, k.Item2) * (circle.Radius * 0.7)))];
            if (texts.Count(t => DrawingTests.Overlap(t.Box(), box)) > 1)
            {
                yield return $"{path}: words lie on the circle at {circle.Middle}";
            }
        }
    }
}
