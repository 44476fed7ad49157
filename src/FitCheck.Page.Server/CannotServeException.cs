namespace FitCheck.Page.Server;

/// <summary>Why there is no page: a sentence for who asked for it.</summary>
internal sealed class CannotServeException(string message) : Exception(message);
