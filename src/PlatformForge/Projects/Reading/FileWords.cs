namespace PlatformForge.Projects.Reading;

/// <summary>How messages speak of a file that is read.</summary>
/// <param name="Name">What it is, without an article.</param>
/// <param name="Start">What to do where there is none, up to the file's name.</param>
/// <param name="Example">A name that such a file may have.</param>
public sealed record FileWords(string Name, string Start, string Example)
{
    public static FileWords Project { get; } = new("project file", "start a new project with: platformforge init ", "platform.toml");

    public static FileWords Measured { get; } = new("table of measured gaps", "write a heading chainage,gap and a row for each gap measured into ", "gaps.csv");

    public static FileWords Vehicle { get; } = new("vehicle file", "write its form with: platformforge init --form ", "my-coach.toml");
}
