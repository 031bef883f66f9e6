using PlatformForge.Units.Memories;

namespace PlatformForge.Projects.Watches;

/// <summary>Who watches a run: told of every stage, and able to stop it between two.</summary>
/// <param name="Begin">Told the name of a stage as it begins.</param>
/// <param name="Cancel">Stops the run at the next stage.</param>
public sealed record RunWatch(Action<string> Begin, CancellationToken Cancel)
{
    /// <summary>Nobody watches.</summary>
    public static RunWatch None { get; } = new(_ => { }, default);

    /// <summary>What the run goes through to write.</summary>
    public WritingGate Gate { get; init; } = new();

    /// <summary>What earlier runs found out. A process that runs once remembers nothing.</summary>
    public Memory Memory { get; init; } = Memory.None;

    /// <summary>A stage begins, unless the run is to stop.</summary>
    internal void Stage(string name)
    {
        Cancel.ThrowIfCancellationRequested();
        Begin(name);
    }
}
