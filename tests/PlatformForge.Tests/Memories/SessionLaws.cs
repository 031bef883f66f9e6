using FsCheck.Xunit;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
using PlatformForge.Units.Memories;
using Xunit;

namespace PlatformForge.Tests.Memories;

/// <summary>A run with a memory gives what a run from nothing gives. Any number of changes on demand: the benchmark <c>session</c>.</summary>
public class SessionLaws
{
    private const int Steps = 3;

    [Property(MaxTest = 2)]
    public void Figures_turned_at_random_and_runs_stopped_anywhere_leave_every_byte_as_from_nothing(int seed)
    {
        var edits = new RandomEdits(Samples.Pendlewick, null, seed);
        for (int i = 0; i < Steps; i++)
        {
            Assert.Null(edits.Step());
        }
    }

    [Fact]
    public void A_set_of_bodies_and_several_tracks_are_known_again()
    {
        var edits = new RandomEdits(PresetShelf.Sample("pendlewick-sets")!, null, 4);
        for (int i = 0; i < 20 && edits.Made < 1; i++)
        {
            Assert.Null(edits.Step());
        }

        Assert.Equal(1, edits.Made);
    }

    /// <summary>Bond, courses, piers, plinth, batter, pipes; bents and their braces.</summary>
    [Theory]
    [InlineData("walls", 1)]
    [InlineData("trestle", 1)]
    public void Walls_and_trestles_turned_at_random_leave_every_byte_as_from_nothing(string what, int seed)
    {
        var edits = what == "walls" ? new RandomEdits(FinishedHalts.Walls, null, seed, keys: TurnedKeys.Walls)
            : new RandomEdits(FinishedHalts.Trestle, null, seed, keys: TurnedKeys.Trestle);
        for (int i = 0; i < 20 && edits.Made < Steps; i++)
        {
            Assert.Null(edits.Step());
        }

        Assert.Equal(Steps, edits.Made);
    }

    [Fact]
    public void What_an_edit_does_not_touch_is_not_done_again()
    {
        var memory = new Memory();
        var watch = new RunWatch(_ => { }, default) { Memory = memory };
        int Made(string stage) => memory.Counts.GetValueOrDefault(stage).Made;
        Assert.NotNull(DesignRun.Design(Samples.Sound(Samples.Pendlewick), watch).Value);
        int sections = Made("section");
        Assert.True(sections > 2);

        // The same again.
        Assert.NotNull(DesignRun.Design(Samples.Sound(Samples.Pendlewick), watch).Value);
        Assert.All(memory.Counts, c => Assert.True(c.Value.Made == (c.Key.Contains("section", StringComparison.Ordinal) ? sections : 1), c.Key));

        // A board's socket that moves by less than it is wide changes the section it stands in.
        Assert.NotNull(DesignRun.Design(Samples.Sound(Samples.Pendlewick, "platform[0].board[0].depth=4.321"), watch).Value);
        Assert.Equal((1, 1, 1, sections + 1), (Made("track"), Made("sweep"), Made("sweeps with less play"), Made("section")));

        // The price of filament is on no picture of a piece.
        Assert.NotNull(DesignRun.Shapes(Samples.Sound(Samples.Pendlewick, "printer.filament.price=31"), watch).Value);
        Assert.Equal(sections + 1, Made("section"));

        // A margin on the bed turns a piece about on it, and raises none; what is printed faster weighs what it did.
        Assert.NotNull(DesignRun.Design(Samples.Sound(Samples.Pendlewick, "printer.margin=7.75"), watch).Value);
        Assert.Equal((sections + 1, 2 * sections + 1), (Made("section"), Made("section on its bed")));
        (int volumes, int overhangs, int forecasts) = (Made("volumes of a section"), Made("overhangs of a section"), Made("forecast of a section"));
        Assert.NotNull(DesignRun.Design(Samples.Sound(Samples.Pendlewick, "printer.speeds.wall=77"), watch).Value);
        Assert.Equal((volumes, overhangs, forecasts + sections), (Made("volumes of a section"), Made("overhangs of a section"), Made("forecast of a section")));

        // More room beside the vehicles is another edge, and the same sweep.
        Assert.NotNull(DesignRun.Design(Samples.Sound(Samples.Pendlewick, "clearance.running=1.2345"), watch).Value);
        Assert.Equal((1, 1), (Made("track"), Made("sweep")));
    }
}
