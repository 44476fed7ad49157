using System.CommandLine;
using FitCheck.Cli.Output;

namespace FitCheck.Cli.Commands;

/// <summary>`fitcheck completion SHELL`: the few lines that let a shell ask the program for its words.</summary>
internal static class CompletionCommand
{
    private const string Bash = """
        # eval "$(fitcheck completion bash)"
        _fitcheck() {
          local IFS=$'\n' line="${COMP_LINE#* }" point=$((COMP_POINT - ${#COMP_WORDS[0]} - 1))
          COMPREPLY=($(compgen -W "$(fitcheck "[suggest:$point]" "$line" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
        }
        complete -o default -F _fitcheck fitcheck

        """;

    private const string Zsh = """
        # eval "$(fitcheck completion zsh)"
        _fitcheck() {
          local line="${BUFFER#* }" point=$((CURSOR - ${#words[1]} - 1))
          compadd -- ${(f)"$(fitcheck "[suggest:$point]" "$line" 2>/dev/null)"}
        }
        compdef _fitcheck fitcheck

        """;

    public static Command Create()
    {
        var shell = new Argument<string>("SHELL") { HelpName = "SHELL", Description = "bash or zsh" };
        shell.AcceptOnlyFromAmong("bash", "zsh");
        var command = new Command("completion", "Print the script that lets the shell complete commands, rules and files") { shell };
        command.SetAction(parsed =>
        {
            Console.Out.Write(parsed.GetValue(shell) == "zsh" ? Zsh : Bash);
            return ExitStatus.Good;
        });
        return command;
    }
}
